import { DormandPrince, type StateVariable } from '../numerics/dormand-prince.js';
import type { AirSpring } from '../unit/air-spring.js';
import { HitMotion } from './hit-motion.js';
import { GRAVITY, type SprungEnd } from './sprung-end.js';

/** How a hit ended: at the peak of travel, at the end of the stroke, or not computed to an end. */
export type HitEnd = 'peak' | 'bottomed' | 'not-converged';

/** A hit takes some 10 to 100 steps; a heavily damped crawl some thousands. */
const MOST_STEPS = 20_000;
/** First step as a part of the time in which travel would squeeze the negative chamber's length; found by trial. */
const FIRST_STEP = 0.3;
/** Order of the error of one step, which sets how the first step follows the tolerance. */
const STEP_ORDER = 5;
/**
 * Slower than this, and hardly slowing, an overdamped end only creeps on with the cooling air: it has come to rest.
 * What such creep still adds is below what a ring shows; m/s and m/s².
 */
const REST_SPEED = 1e-3;
const REST_ACCELERATION = 1e-2;

type HitEvent = 'none' | 'knee' | 'bumper' | 'end of stroke' | 'peak' | 'rest';

/** Looks on while a hit is computed; between an end and the next start the damper's side of its knee may change. */
export interface HitObserver {
  atStepStart(): void;
  atStepEnd(): void;
}

/**
 * A hit of one end from full extension to its peak travel, with the kinks of the damper's knee and the bumper's
 * contact located as events: docs/equations/numerics.md#events. Kept and run again for as many heights as needed.
 */
export class Hit {
  readonly motion: HitMotion;
  readonly stepper: DormandPrince;
  private readonly hasKnee: boolean;
  private event: HitEvent = 'none';
  private eventAt = 1;

  constructor(
    readonly spring: AirSpring,
    readonly end: SprungEnd,
    countsWork: boolean,
  ) {
    this.motion = new HitMotion(spring, end, countsWork);
    this.stepper = new DormandPrince(this.motion);
    const { lowSpeed, highSpeed } = spring.unit.damper;
    this.hasKnee = lowSpeed !== highSpeed;
  }

  /**
   * Runs the hit of a drop from `height` (m) at a relative tolerance; the outcome is in `motion`.
   */
  run(height: number, relativeTolerance: number, observer?: HitObserver): HitEnd {
    const { motion, stepper, spring, end } = this;
    const wheelSpeed = Math.sqrt(2 * GRAVITY * height);
    const shaftSpeed = wheelSpeed / end.leverage.ratio(0);
    const inputEnergy = end.sprungMass * GRAVITY * (height + end.leverage.wheelTravel(spring.stroke));
    motion.begin(shaftSpeed, inputEnergy, relativeTolerance);
    stepper.start(this.firstStep(relativeTolerance));
    if (motion.speed.value === 0 && motion.speed.k1 <= 0) return 'peak';
    while (stepper.steps < MOST_STEPS) {
      observer?.atStepStart();
      if (!stepper.tryStep()) break;
      this.findEvent();
      if (this.event === 'none') stepper.accept();
      else stepper.acceptPart(this.eventAt);
      observer?.atStepEnd();
      if (this.event === 'bumper') motion.isOnBumper = true;
      if (this.event === 'knee') motion.isFast = !motion.isFast;
      if (this.event === 'end of stroke') {
        motion.travel.value = spring.stroke;
        return 'bottomed';
      }
      if (this.event === 'peak' || this.event === 'rest') return 'peak';
    }
    return 'not-converged';
  }

  private firstStep(relativeTolerance: number): number {
    const { negative, stroke } = this.spring;
    const length = Math.min(stroke, negative.volume / Math.abs(negative.area));
    const speed = Math.max(this.motion.speed.value, Math.sqrt(GRAVITY * stroke));
    return (FIRST_STEP * relativeTolerance ** (1 / STEP_ORDER) * length) / speed;
  }

  /** Finds the first event within the step tried last: which one, and at what part of the step. */
  private findEvent(): void {
    const { motion, stepper, spring } = this;
    const { travel, speed } = motion;
    const { kneeSpeed } = spring.unit.damper;
    this.event = 'none';
    if (!this.mayHaveEvent()) return;
    this.eventAt = 1;
    if (speed.next < 0) this.setEvent('peak', speed, 0);
    else if (this.comesToRest()) this.rest();
    if (stepper.at(travel, this.eventAt) > spring.stroke) {
      this.setEvent('end of stroke', travel, spring.stroke);
    }
    if (!motion.isOnBumper && stepper.at(travel, this.eventAt) > spring.bumperContact) {
      this.setEvent('bumper', travel, spring.bumperContact);
    }
    if (this.hasKnee && motion.isFast !== stepper.at(speed, this.eventAt) > kneeSpeed) {
      this.setEvent('knee', speed, kneeSpeed);
    }
  }

  /** Whether anything may have happened within the step tried last; most steps end here. */
  private mayHaveEvent(): boolean {
    const { motion, spring } = this;
    const travel = motion.travel.next;
    const speed = motion.speed.next;
    return (
      speed < REST_SPEED ||
      travel > spring.stroke ||
      (!motion.isOnBumper && travel > spring.bumperContact) ||
      (this.hasKnee && motion.isFast !== speed > spring.unit.damper.kneeSpeed)
    );
  }

  private setEvent(event: HitEvent, variable: StateVariable, level: number): void {
    this.eventAt = this.stepper.locate(variable, level, this.eventAt);
    this.event = event;
  }

  /** Whether at the end of the step tried last the end only creeps, and hardly slows any more. */
  private comesToRest(): boolean {
    const { speed } = this.motion;
    return speed.next < REST_SPEED && Math.abs(speed.k7) < REST_ACCELERATION;
  }

  /** Rest counts from where the speed fell to that of rest, if that was within this step. */
  private rest(): void {
    const { speed } = this.motion;
    if (speed.value > REST_SPEED) this.setEvent('rest', speed, REST_SPEED);
    else this.event = 'rest';
  }
}
