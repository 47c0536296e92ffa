import type { EndUncertaintyDto } from './end.dto.js';

/** What can make an answer uncertain, named as its standard uncertainty is. */
export const UNCERTAIN = [
  'pressurePsi',
  'sprungMassPct',
  'positiveVolumePct',
  'negativeVolumePct',
  'spacerVolumePct',
  'lowerLegVolumePct',
  'dampingPct',
  'sealFrictionPct',
] as const satisfies readonly (keyof EndUncertaintyDto)[];
export type Uncertain = (typeof UNCERTAIN)[number];
