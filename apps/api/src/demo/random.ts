/** Random numbers that a seed decides: the same seed gives the same numbers in the same order. */
export class SeededRandom {
  private state: number;

  /** @param seed whole number; only its lowest 32 bits count. */
  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** Uniform from 0 up to, but not, 1. mulberry32: one 32-bit state, a Weyl step and a mixing function. */
  uniform(): number {
    this.state = (this.state + WEYL_STEP) >>> 0;
    let mixed = this.state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | MIXING_BITS);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / UINT32_COUNT;
  }

  /** Normal with mean 0 and the given standard deviation (Box & Muller 1958). */
  normal(standardDeviation: number): number {
    const radius = Math.sqrt(-2 * Math.log(1 - this.uniform()));
    return standardDeviation * radius * Math.cos(2 * Math.PI * this.uniform());
  }

  /** True with the given probability. */
  chance(probability: number): boolean {
    return this.uniform() < probability;
  }

  /** One of the choices, each as probable as the next. */
  pick<T>(choices: readonly [T, ...T[]]): T {
    return choices[Math.floor(this.uniform() * choices.length)] ?? choices[0];
  }
}

/** Constants of mulberry32 (from memory): odd step of the Weyl sequence, and bits that keep the factor mixed. */
const WEYL_STEP = 0x6d2b79f5;
const MIXING_BITS = 61;
const UINT32_COUNT = 2 ** 32;
