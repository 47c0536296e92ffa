import { millilitresFromCubicMetres } from '@loamledger/units';

/** Spacers that are the same in the box: for forks or for shocks, and of one volume. */
export interface SpacerSize {
  readonly unitKind: 'fork' | 'shock';
  /** Tenths of a millilitre: what is nearer to each other is one size measured twice. */
  readonly spacerSize: number;
}

const SIZES_PER_ML = 10;

/** The size that goes into a unit. */
export const sizeOf = (unit: { kind: 'fork' | 'shock'; spacerVolume: number }): SpacerSize => ({
  unitKind: unit.kind,
  spacerSize: sizeOfMl(millilitresFromCubicMetres(unit.spacerVolume)),
});

export const sizeOfMl = (volumeMl: number): number => Math.round(volumeMl * SIZES_PER_ML);
export const mlOfSize = (spacerSize: number): number => spacerSize / SIZES_PER_ML;
export const sizeKey = ({ unitKind, spacerSize }: SpacerSize): string => `${unitKind} ${spacerSize}`;
