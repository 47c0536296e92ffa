import type { AbsolutePascal, GaugePascal, Kelvin } from '@loamledger/units';
import { volumeAt, type Chamber } from '../gas/chamber.js';
import { requireNumber, requireWhole, SpringInputError } from '../numerics/input-error.js';
import { validateUnit, type AirSpringUnit } from './air-spring-unit.js';

/** What is in a unit, and where: pressure by the pump at full extension after the chambers are equalised. */
export interface SpringFill {
  readonly gaugePressure: GaugePascal;
  readonly spacers: number;
  readonly ambientPressure: AbsolutePascal;
  readonly temperature: Kelvin;
  /** Air trapped in the lower legs at full extension; the ambient pressure (just bled) if left out. */
  readonly lowerLegPressure?: AbsolutePascal;
}

/** A unit with its fill, checked and resolved; everything the force needs. */
export interface AirSpring {
  readonly unit: AirSpringUnit;
  readonly fill: SpringFill;
  readonly stroke: number;
  readonly ambientPressure: number;
  readonly temperature: number;
  readonly positive: Chamber;
  readonly negative: Chamber;
  readonly lowerLeg: Chamber;
  /** Travel at which the bumper is touched, m. */
  readonly bumperContact: number;
}

/** Twice the highest fill of a bicycle's air shock (350 psi: common practice, no source), Pa. */
export const HIGHEST_GAUGE_PRESSURE = 5e6;
/** Ambient pressure from above the highest road (about 50 kPa) to below the lowest (about 107 kPa), Pa. */
const AMBIENT_PRESSURE = { atLeast: 30e3, atMost: 120e3 };
/** From the coldest air measured on Earth to hotter than a hand can hold, K. */
const TEMPERATURE = { atLeast: 180, atMost: 373.15 };

/**
 * The air spring of a unit with a fill, all pressures in Pa.
 *
 * Positive V_p = V_p0 − n·v_s − A·s, negative V_n = V_n0 + (A − A_sh)·s, lower legs V_c = V_c0 − A_c·s; equalised at the
 * transfer position: p_n·V_n = P₀·V_p(0)/V_p(s_t)·V_n(s_t); docs/equations/spring.md#fill.
 * @throws SpringInputError for anything that cannot be built or filled, spacers that fill the chamber among it.
 */
export function airSpring(unit: AirSpringUnit, fill: SpringFill): AirSpring {
  validateUnit(unit);
  validateFill(unit, fill);
  const fillPressure = fill.gaugePressure + fill.ambientPressure;
  const positive: Chamber = {
    volume: unit.positiveVolume - fill.spacers * unit.spacerVolume,
    area: unit.boreArea,
    pressure: fillPressure,
    thermalTime: unit.thermalTime.positive,
  };
  if (!(volumeAt(positive, unit.stroke) > 0)) {
    throw new SpringInputError(
      'fill.spacers',
      fill.spacers,
      '(count)',
      'as many as leave the positive chamber some volume at the end of the stroke',
    );
  }
  return {
    unit,
    fill,
    stroke: unit.stroke,
    ambientPressure: fill.ambientPressure,
    temperature: fill.temperature,
    positive,
    negative: negativeChamber(unit, positive),
    lowerLeg: {
      // Without an area its volume cannot matter; any positive one keeps the formulas whole.
      volume: unit.lowerLegArea === 0 ? 1 : unit.lowerLegVolume,
      area: unit.lowerLegArea,
      pressure: fill.lowerLegPressure ?? fill.ambientPressure,
      thermalTime: unit.thermalTime.lowerLeg,
    },
    bumperContact: unit.stroke - unit.bumperLength,
  };
}

function negativeChamber(unit: AirSpringUnit, positive: Chamber): Chamber {
  const area = unit.shaftArea - unit.boreArea;
  const equalised = (positive.pressure * positive.volume) / volumeAt(positive, unit.transferPosition);
  const volumeThere = unit.negativeVolume - area * unit.transferPosition;
  return {
    volume: unit.negativeVolume,
    area,
    pressure: (equalised * volumeThere) / unit.negativeVolume,
    thermalTime: unit.thermalTime.negative,
  };
}

function validateFill(unit: AirSpringUnit, fill: SpringFill): void {
  requireNumber('fill.gaugePressure', fill.gaugePressure, 'Pa (gauge)', {
    above: 0,
    atMost: HIGHEST_GAUGE_PRESSURE,
  });
  requireNumber('fill.ambientPressure', fill.ambientPressure, 'Pa (absolute)', AMBIENT_PRESSURE);
  requireNumber('fill.temperature', fill.temperature, 'K', TEMPERATURE);
  requireWhole('fill.spacers', fill.spacers, 0, unit.maxSpacers);
  if (fill.lowerLegPressure !== undefined) {
    requireNumber('fill.lowerLegPressure', fill.lowerLegPressure, 'Pa (absolute)', {
      above: 0,
      atMost: HIGHEST_GAUGE_PRESSURE,
    });
  }
}
