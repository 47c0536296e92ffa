import { levelAtLook, type Look } from './look-levels.js';
import { compareRatings, type RatingComparison } from './ratings.js';
import { oddsWords, type RatingStratum } from './rating-odds.js';
import { holmAdjusted } from './tests.js';

/** Ratings of one aspect by riders who rode a set-up (a) and the current one (b). */
export interface FeelQuestion<Aspect extends string = string> {
  readonly arm: string;
  readonly aspect: Aspect;
  readonly strata: readonly RatingStratum[];
}

/** How one aspect was rated, among all that are looked at together. */
interface RatedAspect<Aspect extends string = string> extends RatingComparison {
  readonly arm: string;
  readonly aspect: Aspect;
  /** P value adjusted after Holm, and the smallest that these numbers of ratings can give so; null without ratings. */
  readonly pAmong: number | null;
  readonly smallestPAmong: number | null;
}

/** Feel of several set-ups in several aspects as plain JSON. */
export interface FeelComparison<Aspect extends string = string> {
  /** Comparisons that share the error rate: those with ratings of both by some rider. */
  readonly among: number;
  /** Error rate at this look: what adjusted P values are held against. */
  readonly alpha: number;
  readonly rated: readonly RatedAspect<Aspect>[];
}

/** Error rate over the whole plan and all of its comparisons of ratings. */
const ALPHA = 0.05;
/** P values below this are not written out. */
const SMALLEST_WRITTEN_P = 0.001;

/**
 * Compares how set-ups felt in several aspects, as compareRatings does each alone; P values dimensionless.
 *
 * Whoever looks at several finds one rated higher by chance: P values are adjusted after Holm (holm1979) over all
 * set-ups and aspects with ratings, and held against the level of the look, as those of times are. Feel is a family of
 * its own: it takes nothing from the verdict on time. What stands alone but not among them says so; where not even
 * the clearest ratings could stand out, 'too few ratings'. Throws EvidenceInputError as compareRatings does.
 */
export function compareFeel<Aspect extends string>(
  questions: readonly FeelQuestion<Aspect>[],
  look: Look | null,
): FeelComparison<Aspect> {
  const alone = questions.map(({ strata }) => compareRatings(strata));
  const shared = alone.flatMap(({ p, smallestP }, i) =>
    p === null || smallestP === null ? [] : [{ i, p, smallestP }],
  );
  const among = shared.length;
  const alpha = look === null ? ALPHA : levelAtLook(ALPHA, look, Math.max(1, among));
  const ps = holmAdjusted(shared.map(({ p }) => p));
  // Holm's P values fall with every other one: the smallest is reached where all others are at theirs too.
  const smallest = holmAdjusted(shared.map(({ smallestP }) => smallestP));
  const adjusted = new Map(
    shared.map(({ i }, k) => [i, { p: ps[k] as number, smallestP: smallest[k] as number }]),
  );
  const family = { among, alpha, look };
  const rated = questions.map(({ arm, aspect }, i) => {
    const own = alone[i] as RatingComparison;
    const shares = adjusted.get(i);
    if (!shares) return { ...own, arm, aspect, pAmong: null, smallestPAmong: null };
    return {
      ...own,
      ...amongAll(own, shares, family),
      arm,
      aspect,
      pAmong: shares.p,
      smallestPAmong: shares.smallestP,
    };
  });
  return { among, alpha, rated };
}

interface Family {
  readonly among: number;
  readonly alpha: number;
  readonly look: Look | null;
}

/** Status and sentence of a comparison that is one of several, or one look of several. */
function amongAll(
  own: RatingComparison,
  { p, smallestP }: { readonly p: number; readonly smallestP: number },
  { among, alpha, look }: Family,
): Partial<Pick<RatingComparison, 'status' | 'sentence'>> {
  if (own.status !== 'compared' || (among === 1 && alpha === ALPHA)) return {};
  const exact = `exact P ${pWords(own.p as number)}`;
  const those = among === 1 ? '' : `among ${among} comparisons of ratings`;
  const here = look === null || alpha === ALPHA ? '' : `at look ${look.number}`;
  const where = [those, here].filter((part) => part !== '').join(' ');
  if (smallestP >= alpha) {
    const sentence = `Too few ratings to tell: the smallest P value that they can give ${where} is ${pWords(smallestP)}, against ${pWords(alpha)}.`;
    return { status: 'too few ratings', sentence };
  }
  const direction = `ated ${(own.superiority as number) > 0.5 ? 'higher' : 'lower'}`;
  if (p < alpha) {
    return {
      sentence: `R${direction} (${exact}; ${where} ${pWords(p)}, against ${pWords(alpha)}).${oddsWords(own.odds)}`,
    };
  }
  if ((own.p as number) >= ALPHA) return {};
  return { sentence: `Alone this would say 'r${direction}' (${exact}); ${where} that may be chance.` };
}

const pWords = (p: number): string => (p < SMALLEST_WRITTEN_P ? 'below 0.001' : p.toPrecision(2));
