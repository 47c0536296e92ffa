interface FigureName {
  readonly label: string;
  readonly unit: string;
}

/** Every figure that may be assumed, as a person calls it; by its field in the API. */
export const FIGURE_NAMES = {
  strokeMm: { label: 'Stroke', unit: 'mm' },
  boreAreaMm2: { label: 'Bore area', unit: 'mm²' },
  shaftAreaMm2: { label: 'Air shaft area', unit: 'mm²' },
  positiveVolumeMl: { label: 'Positive volume', unit: 'mL' },
  spacerVolumeMl: { label: 'Volume of one spacer', unit: 'mL' },
  negativeVolumeMl: { label: 'Negative volume', unit: 'mL' },
  transferPositionMm: { label: 'Chambers equalise at', unit: 'mm' },
  lowerLegVolumeMl: { label: 'Air in the lower legs', unit: 'mL' },
  lowerLegAreaMm2: { label: 'Area on the lower-leg air', unit: 'mm²' },
  bumperLengthMm: { label: 'Bumper length', unit: 'mm' },
  bumperEndForceN: { label: 'Bumper force at the end', unit: 'N' },
  damperLowSpeedNsPerM: { label: 'Compression damping, low speed', unit: 'N·s/m' },
  damperKneeSpeedMPerS: { label: 'Damping changes at', unit: 'm/s' },
  damperHighSpeedNsPerM: { label: 'Compression damping, high speed', unit: 'N·s/m' },
  sealFrictionN: { label: 'Seal friction', unit: 'N' },
  thermalTimePositiveS: { label: 'Heat time, positive chamber', unit: 's' },
  thermalTimeNegativeS: { label: 'Heat time, negative chamber', unit: 's' },
  thermalTimeLowerLegS: { label: 'Heat time, lower legs', unit: 's' },
  massKg: { label: 'Mass of the bike', unit: 'kg' },
  frontUnsprungMassKg: { label: 'Front unsprung mass', unit: 'kg' },
  rearUnsprungMassKg: { label: 'Rear unsprung mass', unit: 'kg' },
  headAngleDeg: { label: 'Head angle', unit: '°' },
  frontLoadSharePct: { label: 'Load on the front wheel', unit: '%' },
  centreOfMassHeightMm: { label: 'Height of the centre of mass', unit: 'mm' },
  leverageTable: { label: 'Leverage table', unit: '' },
  readyMassKg: { label: 'Mass ready to ride', unit: 'kg' },
} as const satisfies Record<string, FigureName>;

/** How a field of the API is called; a field nobody has named yet keeps its own name. */
export function figureName(field: string): FigureName {
  return (FIGURE_NAMES as Record<string, FigureName>)[field] ?? { label: field, unit: '' };
}
