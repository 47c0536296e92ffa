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

/** How one comes by a figure that does not explain itself. */
export const FIGURE_HINTS: Readonly<Partial<Record<UnitFigure, string>>> = {
  strokeMm: 'Travel of a fork, shaft stroke of a shock',
  boreAreaMm2: 'Positive chamber: π/4 times its inner diameter squared',
  positiveVolumeMl: 'At full extension, without spacers',
  spacerVolumeMl: 'By dipping it into a measuring glass',
  negativeVolumeMl: 'At full extension',
  transferPositionMm: 'Travel at which both have the same pressure',
  lowerLegVolumeMl: 'At full extension',
};

const FORK_ONLY: readonly UnitFigure[] = ['lowerLegVolumeMl', 'lowerLegAreaMm2', 'thermalTimeLowerLegS'];

/** The figures that a unit of this kind has. */
export const figuresOf = (kind: 'fork' | 'shock') =>
  UNIT_FIGURES.filter((figure) => kind === 'fork' || !FORK_ONLY.includes(figure));
