import { requireNumber, requireWhole, SpringInputError } from '../numerics/input-error.js';

/** Thermal time constants of the three chambers, s: 0 isothermal, Infinity adiabatic. */
export interface ThermalTime {
  readonly positive: number;
  readonly negative: number;
  readonly lowerLeg: number;
}

/** Two-slope damper in compression: force c_l·v up to the knee, c_h per further m/s beyond it. */
export interface Damper {
  /** N·s/m. */
  readonly lowSpeed: number;
  /** m/s. */
  readonly kneeSpeed: number;
  /** N·s/m. */
  readonly highSpeed: number;
}

/** A fork's or a shock's air spring with its damper, as built: docs/equations/spring.md#quantities. */
export interface AirSpringUnit {
  readonly kind: 'fork' | 'shock';
  /** Travel at the end of the stroke along the fork axis or the shock shaft, m. */
  readonly stroke: number;
  /** Area of the air piston, m². */
  readonly boreArea: number;
  /** Area of the shaft that takes room in the negative chamber, m². */
  readonly shaftArea: number;
  /** Positive chamber at full extension without spacers, m³. */
  readonly positiveVolume: number;
  /** Volume of one spacer, m³. */
  readonly spacerVolume: number;
  /** Most spacers that the unit takes. */
  readonly maxSpacers: number;
  /** Negative chamber at full extension, m³. */
  readonly negativeVolume: number;
  /** Travel at which the two chambers equalise, m. */
  readonly transferPosition: number;
  /** Air in the lower legs at full extension, m³. */
  readonly lowerLegVolume: number;
  /** Area by which the air in the lower legs is squeezed, m²; 0 for a shock. */
  readonly lowerLegArea: number;
  /** Length of the bottom-out bumper, m; 0 for none. */
  readonly bumperLength: number;
  /** Force of the bumper at the end of the stroke, N. */
  readonly bumperEndForce: number;
  readonly damper: Damper;
  /** Coulomb friction of seals and bushings, N. */
  readonly sealFriction: number;
  readonly thermalTime: ThermalTime;
}

/**
 * Thermal time constants where none were measured, s. Assumed, no source: their order follows the size of the
 * chambers; a hit lasts about 0.1 s, so above 0.3 s they hardly matter (effective exponent 1.36–1.40).
 */
export const DEFAULT_THERMAL_TIME: ThermalTime = { positive: 1.5, negative: 0.3, lowerLeg: 1 };

/** Longest stroke of any bicycle fork or shock, with a wide margin, m. */
const LONGEST_STROKE = 0.5;
/** More volume spacers than any unit takes. */
export const MOST_SPACERS = 50;

/** Throws a SpringInputError for the first thing in a unit that cannot be built. */
export function validateUnit(unit: AirSpringUnit): void {
  if (unit.kind !== 'fork' && unit.kind !== 'shock') {
    throw new SpringInputError('unit.kind', unit.kind, '', "'fork' or 'shock'");
  }
  requireNumber('unit.stroke', unit.stroke, 'm', { above: 0, atMost: LONGEST_STROKE });
  validateChambers(unit);
  requireNumber('unit.bumperLength', unit.bumperLength, 'm', { atLeast: 0, atMost: unit.stroke });
  requireNumber('unit.bumperEndForce', unit.bumperEndForce, 'N', { atLeast: 0 });
  requireNumber('unit.damper.lowSpeed', unit.damper.lowSpeed, 'N·s/m', { atLeast: 0 });
  requireNumber('unit.damper.kneeSpeed', unit.damper.kneeSpeed, 'm/s', { atLeast: 0 });
  requireNumber('unit.damper.highSpeed', unit.damper.highSpeed, 'N·s/m', { atLeast: 0 });
  requireNumber('unit.sealFriction', unit.sealFriction, 'N', { atLeast: 0 });
  validateThermalTime(unit.thermalTime);
}

function validateChambers(unit: AirSpringUnit): void {
  requireNumber('unit.boreArea', unit.boreArea, 'm²', { above: 0 });
  requireNumber('unit.shaftArea', unit.shaftArea, 'm²', { atLeast: 0, below: unit.boreArea });
  requireNumber('unit.positiveVolume', unit.positiveVolume, 'm³', { above: unit.boreArea * unit.stroke });
  requireNumber('unit.spacerVolume', unit.spacerVolume, 'm³', { atLeast: 0 });
  requireWhole('unit.maxSpacers', unit.maxSpacers, 0, MOST_SPACERS);
  requireNumber('unit.negativeVolume', unit.negativeVolume, 'm³', { above: 0 });
  requireNumber('unit.transferPosition', unit.transferPosition, 'm', { atLeast: 0, below: unit.stroke });
  requireNumber(
    'unit.lowerLegArea',
    unit.lowerLegArea,
    'm²',
    unit.kind === 'shock' ? { atLeast: 0, atMost: 0 } : { atLeast: 0 },
  );
  if (unit.lowerLegArea > 0) {
    requireNumber('unit.lowerLegVolume', unit.lowerLegVolume, 'm³', {
      above: unit.lowerLegArea * unit.stroke,
    });
  } else {
    requireNumber('unit.lowerLegVolume', unit.lowerLegVolume, 'm³', { atLeast: 0 });
  }
}

function validateThermalTime(times: ThermalTime): void {
  for (const chamber of ['positive', 'negative', 'lowerLeg'] as const) {
    const time = times[chamber];
    if (time !== Infinity) requireNumber(`unit.thermalTime.${chamber}`, time, 's', { atLeast: 0 });
  }
}
