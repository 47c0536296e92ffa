import {
  airSpring,
  DEFAULT_THERMAL_TIME,
  forkLeverage,
  leverageFromTable,
  type AirSpringUnit,
  type Scene,
} from '@loamledger/spring';
import { absolutePascal, gaugePascalFromPsi, kelvin, radianFromDegrees } from '@loamledger/units';
import units from '../../reference/generic_units.json' with { type: 'json' };
import { BIKE, FORK, SHOCK } from './team.js';

const { fork170, shock_progressive: shockProgressive } = units.outputs;
type ReferenceUnit = typeof fork170 | typeof shockProgressive;

const AIR_PRESSURE = absolutePascal(90_000);
const TEMPERATURE_C = 15;

const STORED_ONLY = ['name', 'sources', 'minPressurePsi', 'maxPressurePsi', 'maxSpacers', 'spacersInStock'];

/** A unit's body without what belongs to a stored unit only. */
const figuresOf = (unit: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries(unit).filter(([name]) => !STORED_ONLY.includes(name)));

/** The air around in these tests. */
export const AIR = { stationPressureHpa: 900, airTemperatureC: TEMPERATURE_C };

/** Ends as a question tells them. */
export const FORK_END = { unit: figuresOf(FORK), sprungMassKg: 37.5, headAngleDeg: 64, air: AIR };
export const SHOCK_END = {
  unit: figuresOf(SHOCK),
  sprungMassKg: 55,
  leverageTable: BIKE.leverageTable,
  air: AIR,
};

const engineUnit = (kind: 'fork' | 'shock', unit: ReferenceUnit): AirSpringUnit => ({
  kind,
  stroke: unit.S,
  boreArea: unit.A,
  shaftArea: unit.A_shaft,
  positiveVolume: unit.Vp0,
  spacerVolume: unit.v_s,
  maxSpacers: 30,
  negativeVolume: unit.Vn0,
  transferPosition: unit.x_t,
  lowerLegVolume: kind === 'fork' ? unit.Vc0 : 0,
  lowerLegArea: kind === 'fork' ? unit.A_c : 0,
  bumperLength: unit.L_b,
  bumperEndForce: unit.F_b,
  damper: { lowSpeed: unit.c_l, kneeSpeed: unit.v_k, highSpeed: unit.c_h },
  sealFriction: unit.F_f,
  thermalTime: DEFAULT_THERMAL_TIME,
});

/** The same end for the library, in SI units by hand: nothing of the service's own conversions. */
export function scene(kind: 'fork' | 'shock', pressurePsi: number, spacers: number): Scene {
  const unit = engineUnit(kind, kind === 'fork' ? fork170 : shockProgressive);
  const rows = BIKE.leverageTable.map((row) => ({
    shockTravel: row.shockTravelMm / 1e3,
    leverageRatio: row.leverageRatio,
  }));
  return {
    unit,
    fill: {
      gaugePressure: gaugePascalFromPsi(pressurePsi),
      spacers,
      ambientPressure: AIR_PRESSURE,
      temperature: kelvin(TEMPERATURE_C + 273.15),
    },
    end:
      kind === 'fork'
        ? { sprungMass: FORK_END.sprungMassKg, leverage: forkLeverage(radianFromDegrees(64)) }
        : { sprungMass: SHOCK_END.sprungMassKg, leverage: leverageFromTable(rows, unit.stroke) },
  };
}

export const springOf = ({ unit, fill }: Scene) => airSpring(unit, fill);

/** Answers carry 12 digits; what steps of a solver make of the last digit of an input is far below this. */
export const RELATIVE = 1e-8;

/** Whether two numbers agree but for rounding. */
export const near = (expected: number) => ({
  asymmetricMatch: (actual: unknown) =>
    typeof actual === 'number' &&
    Math.abs(actual - expected) <= RELATIVE * Math.max(1e-6, Math.abs(expected)),
  toString: () => `near ${expected}`,
});
