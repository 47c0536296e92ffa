import { thermalChamber, isTemperatureFree, type ThermalChamber } from '../gas/thermal-chamber.js';
import { StateVariable, type OdeSystem } from '../numerics/dormand-prince.js';
import type { AirSpring } from '../unit/air-spring.js';
import { bumperCurvature } from '../unit/force.js';
import { GRAVITY, type SprungEnd } from './sprung-end.js';

/**
 * Equation of motion of one end while its spring is compressed: docs/equations/frame.md#motion.
 *
 * m(LR²·s̈ + LR·LR′·ṡ²) = m·g·LR − F(s, ṡ, T). The damper's knee and the bumper's contact are kinks: which side holds
 * is a setting (`isFast`, `isOnBumper`) that the caller changes between steps, so that each step sees smooth equations.
 */
export class HitMotion implements OdeSystem {
  readonly travel = new StateVariable();
  readonly speed = new StateVariable();
  readonly positive = new StateVariable();
  readonly negative = new StateVariable();
  readonly lowerLeg = new StateVariable();
  /** Work done on the gas and on the damper, J; integrated along only on request. */
  readonly gasWork = new StateVariable();
  readonly damperWork = new StateVariable();
  readonly variables: readonly StateVariable[];

  isFast = false;
  isOnBumper = false;

  private readonly positiveGas: ThermalChamber;
  private readonly negativeGas: ThermalChamber;
  private readonly lowerLegGas: ThermalChamber;
  private readonly ambientForce: number;
  private readonly bumperCurvature: number;
  private readonly fastOffset: number;

  constructor(
    readonly spring: AirSpring,
    readonly end: SprungEnd,
    countsWork: boolean,
  ) {
    const { positive, negative, lowerLeg, temperature } = spring;
    this.positiveGas = thermalChamber(positive, temperature);
    this.negativeGas = thermalChamber(negative, temperature);
    this.lowerLegGas = thermalChamber(lowerLeg, temperature);
    this.ambientForce = spring.ambientPressure * (positive.area + negative.area + lowerLeg.area);
    this.bumperCurvature = bumperCurvature(spring);
    const { lowSpeed, kneeSpeed, highSpeed } = spring.unit.damper;
    this.fastOffset = (lowSpeed - highSpeed) * kneeSpeed;
    this.variables = [
      this.travel,
      this.speed,
      ...(isTemperatureFree(positive) ? [this.positive] : []),
      ...(isTemperatureFree(negative) ? [this.negative] : []),
      ...(isTemperatureFree(lowerLeg) ? [this.lowerLeg] : []),
      ...(countsWork ? [this.gasWork, this.damperWork] : []),
    ];
  }

  /** Puts the end at full extension with the given shaft speed; tolerances are `relative` to stroke, speed, … */
  begin(shaftSpeed: number, inputEnergy: number, relative: number): void {
    const { spring } = this;
    const { damper } = spring.unit;
    const speedScale = Math.max(shaftSpeed, Math.sqrt(GRAVITY * spring.stroke));
    this.travel.set(0, relative * spring.stroke);
    this.speed.set(shaftSpeed, relative * speedScale);
    for (const chamber of [this.positive, this.negative, this.lowerLeg]) {
      chamber.set(spring.temperature, relative * spring.temperature);
    }
    for (const work of [this.gasWork, this.damperWork]) work.set(0, relative * inputEnergy);
    this.isFast = shaftSpeed > damper.kneeSpeed;
    this.isOnBumper = spring.bumperContact === 0 || spring.unit.bumperLength === 0;
  }

  evaluate(): void {
    const travel = this.travel.trial;
    const speed = this.speed.trial;
    const { lowSpeed, highSpeed } = this.spring.unit.damper;
    const gas =
      chamberRate(this.positiveGas, this.positive, travel, speed) +
      chamberRate(this.negativeGas, this.negative, travel, speed) +
      chamberRate(this.lowerLegGas, this.lowerLeg, travel, speed) -
      this.ambientForce;
    const damper = this.isFast ? this.fastOffset + highSpeed * speed : lowSpeed * speed;
    const depth = travel - this.spring.bumperContact;
    const bumper = this.isOnBumper ? this.bumperCurvature * depth * depth : 0;
    const total = gas + bumper + damper + this.spring.unit.sealFriction;
    const { leverage, sprungMass } = this.end;
    const ratio = leverage.ratio(travel);
    this.travel.rate = speed;
    this.speed.rate =
      (GRAVITY - total / (sprungMass * ratio) - leverage.slope(travel) * speed * speed) / ratio;
    this.gasWork.rate = gas * speed;
    this.damperWork.rate = damper * speed;
  }

  /** Force of gas, bumper, damper and friction at the start of the present step, N; from its acceleration. */
  totalForce(): number {
    const { leverage, sprungMass } = this.end;
    const ratio = leverage.ratio(this.travel.value);
    const slope = leverage.slope(this.travel.value);
    return sprungMass * ratio * (GRAVITY - ratio * this.speed.k1 - slope * this.speed.value ** 2);
  }

  /** Rate of that force, N/s. */
  totalForceRate(): number {
    const travel = this.travel.value;
    const speed = this.speed.value;
    const { lowSpeed, highSpeed } = this.spring.unit.damper;
    const depth = this.isOnBumper ? travel - this.spring.bumperContact : 0;
    return (
      forceRate(this.positiveGas, this.positive, travel, speed) +
      forceRate(this.negativeGas, this.negative, travel, speed) +
      forceRate(this.lowerLegGas, this.lowerLeg, travel, speed) +
      2 * this.bumperCurvature * depth * speed +
      (this.isFast ? highSpeed : lowSpeed) * this.speed.k1
    );
  }

  /** Absolute pressure (Pa) and temperature (K) of each chamber at the start of the present step. */
  chambers(): Record<'positive' | 'negative' | 'lowerLeg', ChamberState> {
    const travel = this.travel.value;
    return {
      positive: chamberState(this.positiveGas, this.positive.value, travel),
      negative: chamberState(this.negativeGas, this.negative.value, travel),
      lowerLeg: chamberState(this.lowerLegGas, this.lowerLeg.value, travel),
    };
  }

  /** Force of the gas alone at the start of the present step, N. */
  gasForce(): number {
    const { positive, negative, lowerLeg } = this.chambers();
    return (
      positive.pressure * this.positiveGas.area +
      negative.pressure * this.negativeGas.area +
      lowerLeg.pressure * this.lowerLegGas.area -
      this.ambientForce
    );
  }
}

/** Gas of one chamber at an instant. */
export interface ChamberState {
  /** Absolute, Pa. */
  readonly pressure: number;
  /** K. */
  readonly temperature: number;
}

function chamberState(gas: ThermalChamber, temperature: number, travel: number): ChamberState {
  const volume = gas.volume - gas.area * travel;
  return { pressure: (gas.gasConstant * temperature) / volume, temperature };
}

/** d(p·a)/dt of one chamber, N/s. */
function forceRate(gas: ThermalChamber, temperature: StateVariable, travel: number, speed: number): number {
  const volume = gas.volume - gas.area * travel;
  const force = (gas.gasConstant * temperature.value * gas.area) / volume;
  return force * (temperature.k1 / temperature.value + (gas.area * speed) / volume);
}

/** Writes the rate of the chamber's temperature and returns its absolute pressure times its area, N. */
function chamberRate(gas: ThermalChamber, temperature: StateVariable, travel: number, speed: number): number {
  const area = gas.area;
  const kelvinPerVolume = temperature.trial / (gas.volume - area * travel);
  temperature.rate =
    (gas.wallTemperature - temperature.trial) * gas.exchangeRate +
    gas.heating * kelvinPerVolume * area * speed;
  return gas.gasConstant * kelvinPerVolume * area;
}
