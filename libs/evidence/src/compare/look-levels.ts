import { EvidenceInputError } from '../errors.js';
import { tUpperQuantile } from '../numerics/distributions.js';
import { normalUpperTail } from '../numerics/normal.js';
import { gaussLegendre } from '../numerics/quadrature.js';

/** A look at a plan while it is ridden. */
export interface Look {
  /** Number of the look, from 1. */
  readonly number: number;
  /** Looks agreed beforehand, evenly spaced over the runs; null where nobody knows how many will come. */
  readonly of: number | null;
}

/**
 * Share of α that several looks use: with few degrees of freedom, t statistics of one look and the next hang together less
 * than normal ones. Of 10,000 simulated plans of 4 and 8 runs an arm without a past, 5.5 in 100 were wrong with all of it.
 */
const USED_OF_SEVERAL = 0.9;

/** Twice the blocks that a plan may have. */
const MOST_LOOKS = 40;

/** Throws EvidenceInputError for a look that cannot be. */
export function requireLook({ number, of }: Look): void {
  const isCount = (value: number, most: number): boolean =>
    Number.isInteger(value) && value >= 1 && value <= most;
  if (of !== null && !isCount(of, MOST_LOOKS))
    throw new EvidenceInputError('look.of', of, 'looks', `whole numbers from 1 to ${MOST_LOOKS}, or null`);
  if (!isCount(number, of ?? Number.MAX_SAFE_INTEGER))
    throw new EvidenceInputError(
      'look.number',
      number,
      'number of the look',
      `whole numbers from 1 to ${of ?? '∞'}`,
    );
}

/**
 * Two-sided level that each of `tests` P values is held against at a look, before Holm shares it out, dimensionless.
 *
 * Where the number of looks is known: `looksLevels`, the smallest over the shares that Holm's steps can take of α, as
 * each step has to keep its own share over all looks (ye2013); of several looks a tenth of α is kept back. Where it is
 * not: α/(b(b+1)), which adds up to less than α over any number of looks. 0 < alpha < 1; tests ≥ 1.
 */
export function levelAtLook(alpha: number, look: Look, tests: number): number {
  requireLook(look);
  if (look.of === null) return alpha / (look.number * (look.number + 1));
  const used = look.of === 1 ? 1 : USED_OF_SEVERAL;
  const at = (share: number): number =>
    looksLevels((used * alpha) / share, look.of as number)[look.number - 1] as number;
  // The share in between is never the smallest: k·level(α/k) falls, or rises, or has its top inside.
  return Math.min(at(1), tests * at(tests));
}

const memory = new Map<string, readonly number[]>();
/** Of α and looks; a team meets a handful. */
const MOST_REMEMBERED = 200;

/**
 * Nominal two-sided levels of `looks` evenly spaced looks whose chance of any false finding adds up to α, dimensionless.
 *
 * Spending after lan1983 of the shape of obrien1979: by the share t of the runs each side has spent 2 − 2Φ(z(α/4)/√t), little
 * at first. The level at each look is what the score process, Brownian in t, crosses first with the probability spent there
 * (armitage1969); it is held against P values of t tests as they are (jennison2000, significance-level approach).
 * Absolute error below 1e-7. 0 < alpha < 1; looks 1 … 40.
 */
export function looksLevels(alpha: number, looks: number): readonly number[] {
  const key = `${alpha}/${looks}`;
  const known = memory.get(key);
  if (known) return known;
  const levels = levelsOf(alpha, looks);
  if (memory.size >= MOST_REMEMBERED) memory.clear();
  memory.set(key, levels);
  return levels;
}

function levelsOf(alpha: number, looks: number): number[] {
  const z = tUpperQuantile(alpha / 4, Number.POSITIVE_INFINITY);
  const spentBy = (t: number): number => 4 * normalUpperTail(z / Math.sqrt(t));
  const levels: number[] = [];
  let inside: Inside = { scores: [0], masses: [1] };
  for (let look = 1; look <= looks; look += 1) {
    const spent = spentBy(look / looks) - (look === 1 ? 0 : spentBy((look - 1) / looks));
    const bound = boundSpending(inside, 1 / looks, spent);
    levels.push(2 * normalUpperTail(bound / Math.sqrt(look / looks)));
    if (look < looks) inside = goneOn(inside, 1 / looks, bound);
  }
  return levels;
}

/** Score process of the trials that have not crossed yet: places and probability masses of a quadrature rule. */
interface Inside {
  readonly scores: readonly number[];
  readonly masses: readonly number[];
}

/** Probability that the score is beyond ± bound after a step of this variance. */
function beyond({ scores, masses }: Inside, variance: number, bound: number): number {
  const sd = Math.sqrt(variance);
  let sum = 0;
  for (const [i, score] of scores.entries()) {
    sum +=
      (masses[i] as number) * (normalUpperTail((bound - score) / sd) + normalUpperTail((bound + score) / sd));
  }
  return sum;
}

/** No score of total variance 1 is beyond this: 2e-33. */
const FARTHEST_SCORE = 12;
const BISECTIONS = 60;

/** The bound that the score crosses first at this look with the probability to be spent. */
function boundSpending(inside: Inside, variance: number, spent: number): number {
  let low = 0;
  let high = FARTHEST_SCORE;
  for (let i = 0; i < BISECTIONS; i += 1) {
    const middle = (low + high) / 2;
    if (beyond(inside, variance, middle) > spent) low = middle;
    else high = middle;
  }
  return high;
}

/** Width of a panel of 16 points in standard deviations of a step, over which its density is smooth. */
const PANEL_IN_SDS = 3;

/** Those that stayed within the bound, one step on. */
function goneOn({ scores, masses }: Inside, variance: number, bound: number): Inside {
  const sd = Math.sqrt(variance);
  const rule = gaussLegendre(-bound, bound, Math.ceil((2 * bound) / (PANEL_IN_SDS * sd)));
  const scale = 1 / (sd * Math.sqrt(2 * Math.PI));
  return {
    scores: rule.x,
    masses: rule.x.map((x, i) => {
      let density = 0;
      for (const [j, score] of scores.entries()) {
        const u = (x - score) / sd;
        density += (masses[j] as number) * Math.exp(-0.5 * u * u);
      }
      return density * scale * (rule.weight[i] as number);
    }),
  };
}
