import { SeededRandom } from '@loamledger/api/demo/random.js';

/** Odd, so that different numbers stay different: 2³²/golden ratio (Fibonacci hashing). */
const SPREAD = 0x9e3779b1;

/** Random numbers of their own for each purpose of each simulated team: more of one changes nothing in the others. */
export function stream(seed: number, team: number, purpose: number): SeededRandom {
  let mixed = seed >>> 0;
  for (const part of [team, purpose]) mixed = Math.imul(mixed ^ (part + 1), SPREAD) ^ (mixed >>> 15);
  return new SeededRandom(mixed >>> 0);
}
