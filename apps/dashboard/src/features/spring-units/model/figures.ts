import type { FieldSpec } from '../../../shared/ui/form/field-spec.js';

/** Every figure of a unit that has a source of its own. */
export const UNIT_FIGURES = [
  'strokeMm',
  'boreAreaMm2',
  'shaftAreaMm2',
  'positiveVolumeMl',
  'spacerVolumeMl',
  'negativeVolumeMl',
  'transferPositionMm',
  'lowerLegVolumeMl',
  'lowerLegAreaMm2',
  'bumperLengthMm',
  'bumperEndForceN',
  'damperLowSpeedNsPerM',
  'damperKneeSpeedMPerS',
  'damperHighSpeedNsPerM',
  'sealFrictionN',
  'thermalTimePositiveS',
  'thermalTimeNegativeS',
  'thermalTimeLowerLegS',
] as const;

export type UnitFigure = (typeof UNIT_FIGURES)[number];

type FigureText = Pick<FieldSpec, 'label' | 'unit' | 'hint'> & { readonly forkOnly?: boolean };

/** How each figure is named, in which unit, and how one comes by it. */
export const FIGURE_TEXTS: Readonly<Record<UnitFigure, FigureText>> = {
  strokeMm: { label: 'Stroke', unit: 'mm', hint: 'Travel of a fork, shaft stroke of a shock' },
  boreAreaMm2: {
    label: 'Bore area',
    unit: 'mm²',
    hint: 'Positive chamber: π/4 times its inner diameter squared',
  },
  shaftAreaMm2: { label: 'Air shaft area', unit: 'mm²' },
  positiveVolumeMl: { label: 'Positive volume', unit: 'mL', hint: 'At full extension, without spacers' },
  spacerVolumeMl: { label: 'Volume of one spacer', unit: 'mL', hint: 'By dipping it into a measuring glass' },
  negativeVolumeMl: { label: 'Negative volume', unit: 'mL', hint: 'At full extension' },
  transferPositionMm: {
    label: 'Chambers equalise at',
    unit: 'mm',
    hint: 'Travel at which both have the same pressure',
  },
  lowerLegVolumeMl: { label: 'Air in the lower legs', unit: 'mL', hint: 'At full extension', forkOnly: true },
  lowerLegAreaMm2: { label: 'Area on the lower-leg air', unit: 'mm²', forkOnly: true },
  bumperLengthMm: { label: 'Bumper length', unit: 'mm' },
  bumperEndForceN: { label: 'Bumper force at the end', unit: 'N' },
  damperLowSpeedNsPerM: { label: 'Compression damping, low speed', unit: 'N·s/m' },
  damperKneeSpeedMPerS: { label: 'Damping changes at', unit: 'm/s' },
  damperHighSpeedNsPerM: { label: 'Compression damping, high speed', unit: 'N·s/m' },
  sealFrictionN: { label: 'Seal friction', unit: 'N' },
  thermalTimePositiveS: { label: 'Heat time, positive chamber', unit: 's' },
  thermalTimeNegativeS: { label: 'Heat time, negative chamber', unit: 's' },
  thermalTimeLowerLegS: { label: 'Heat time, lower legs', unit: 's', forkOnly: true },
};

/** The figures that a unit of this kind has. */
export const figuresOf = (kind: 'fork' | 'shock') =>
  UNIT_FIGURES.filter((figure) => kind === 'fork' || FIGURE_TEXTS[figure].forkOnly !== true);
