import {
  airSpring,
  forkLeverage,
  leverageFromTable,
  type AirSpringUnit,
  type Scene,
} from '@loamledger/spring';
import { absolutePascal, gaugePascalFromPsi, kelvin, radianFromDegrees } from '@loamledger/units';
import { genericUnit, unitOf } from '../../reference/spring-reference.js';
import { BIKE, FORK, SHOCK } from './team.js';

const AIR_PRESSURE = absolutePascal(90_000);
const TEMPERATURE_C = 15;

const STORED_ONLY = ['name', 'sources', 'minPressurePsi', 'maxPressurePsi', 'maxSpacers'];

/** A unit's body without what belongs to a stored unit only. */
const figuresOf = (unit: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries(unit).filter(([name]) => !STORED_ONLY.includes(name)));

/** The air around in these tests. */
const AIR = { stationPressureHpa: 900, airTemperatureC: TEMPERATURE_C };

/** Ends as a question tells them. */
export const FORK_END = { unit: figuresOf(FORK), sprungMassKg: 37.5, headAngleDeg: 64, air: AIR };
export const SHOCK_END = {
  unit: figuresOf(SHOCK),
  sprungMassKg: 55,
  leverageTable: BIKE.leverageTable,
  air: AIR,
};

/** As reference files have it, with as many spacers as any unit takes. */
const engineUnit = (name: 'fork170' | 'shock_progressive'): AirSpringUnit => ({
  ...unitOf(genericUnit(name)),
  maxSpacers: 30,
});

/** The same end for the library, in SI units by hand: nothing of the service's own conversions. */
export function scene(kind: 'fork' | 'shock', pressurePsi: number, spacers: number): Scene {
  const unit = engineUnit(kind === 'fork' ? 'fork170' : 'shock_progressive');
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
const RELATIVE = 1e-8;

/** Whether two numbers agree but for rounding. */
export const near = (expected: number) => ({
  asymmetricMatch: (actual: unknown) =>
    typeof actual === 'number' &&
    Math.abs(actual - expected) <= RELATIVE * Math.max(1e-6, Math.abs(expected)),
  toString: () => `near ${expected}`,
});
