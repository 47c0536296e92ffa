import { airSpring, bottomingHeight, spacerTrade, type TradeTarget } from '@loamledger/spring';
import { gaugePascal, psiFromGaugePascal } from '@loamledger/units';
import type { Fill } from './fill.js';
import { sceneOf, type Mount } from './mount.js';

/** The pressure that keeps one property with another spacer count, or why none does. */
export type Kept =
  | {
      readonly status: 'found';
      readonly pressurePsi: number;
      /** Against the pressure now. */
      readonly changePsi: number;
    }
  | { readonly status: 'out of reach'; readonly message: string };

export interface Trade {
  readonly spacersFrom: number;
  readonly spacersTo: number;
  readonly peakTravel: Kept;
  readonly midStroke: Kept;
  readonly sag: Kept;
}

/** Without a track, or where its big hit bottoms as it is, peak travel is kept at this part of the fullest hit's height. */
const NEAR_FULL = 0.9;

/** The spacer count a trade is told for: the proposed one, or one more than now, or one fewer where no more go in. */
export function tradedSpacers(now: number, proposed: number, most: number): number {
  if (proposed !== now) return proposed;
  return now < most ? now + 1 : now - 1;
}

/**
 * What to pump with another spacer count to keep peak travel, mid-stroke support or sag as now; null where there is
 * only one spacer count. @throws SpringInputError for a count that the unit cannot take.
 */
export function tradeFor(
  mount: Mount,
  now: Fill,
  spacersTo: number,
  highHitM: number | undefined,
): Trade | null {
  if (spacersTo < 0 || spacersTo === now.spacers) return null;
  const { unit, fill, end } = sceneOf(mount, now);
  const fullest = bottomingHeight(airSpring(unit, fill), end);
  const nearFull = fullest.status === 'found' ? NEAR_FULL * fullest.height : undefined;
  const height =
    highHitM !== undefined && (fullest.status !== 'found' || highHitM < fullest.height)
      ? highHitM
      : (nearFull ?? 0);
  const trade = spacerTrade(unit, fill, end, spacersTo, height);
  return {
    spacersFrom: now.spacers,
    spacersTo,
    peakTravel: kept(trade.peakTravel),
    midStroke: kept(trade.midStroke),
    sag: kept(trade.sag),
  };
}

function kept(target: TradeTarget): Kept {
  if (target.status === 'out-of-reach') return { status: 'out of reach', message: target.message };
  return {
    status: 'found',
    pressurePsi: psiFromGaugePascal(target.gaugePressure),
    changePsi: psiFromGaugePascal(gaugePascal(target.change)),
  };
}
