import type { SpacerMovementEntity } from './spacer-movement.entity.js';
import { mlOfSize, sizeKey, sizeOf, type SpacerSize } from './spacer-size.js';
import type { SpacerMovementDto, SpacerStockDto } from './spacers.dto.js';

/** Every size that was counted or that a unit takes, the forks' first and the smaller before the larger. */
export function stockAnswers(
  stocks: readonly (SpacerSize & { readonly inStock: number })[],
  units: readonly { id: string; kind: 'fork' | 'shock'; spacerVolume: number }[],
): SpacerStockDto[] {
  const sizes = new Map<string, SpacerSize>();
  for (const size of [...stocks, ...units.map(sizeOf)]) sizes.set(sizeKey(size), size);
  return [...sizes]
    .toSorted(([, a], [, b]) => a.unitKind.localeCompare(b.unitKind) || a.spacerSize - b.spacerSize)
    .map(([key, { unitKind, spacerSize }]) => ({
      unitKind,
      spacerVolumeMl: mlOfSize(spacerSize),
      inStock: stocks.find((stock) => sizeKey(stock) === key)?.inStock ?? 0,
      unitIds: units.filter((unit) => sizeKey(sizeOf(unit)) === key).map(({ id }) => id),
    }));
}

/** A movement as a message. */
export const movementAnswer = (movement: SpacerMovementEntity, isReversed: boolean): SpacerMovementDto => ({
  id: movement.id,
  unitKind: movement.unitKind,
  spacerVolumeMl: mlOfSize(movement.spacerSize),
  reason: movement.reason,
  change: movement.change,
  inStock: movement.inStock,
  note: movement.note,
  enteredAt: movement.createdAt.toISOString(),
  enteredBy: movement.enteredBy,
  reversesId: movement.reversesId,
  isReversed,
});
