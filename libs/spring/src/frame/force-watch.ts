import type { Hit, HitObserver } from './hit.js';

/**
 * Follows the total force on a spring through a hit to its greatest value, N: within each step by the cubic that
 * has the force and its rate at both ends (docs/equations/numerics.md#greatest-force).
 */
export class ForceWatch implements HitObserver {
  greatest = -Infinity;
  private startTime = 0;
  private startForce = 0;
  private startRate = 0;

  constructor(private readonly hit: Hit) {}

  atStepStart(): void {
    const { motion, stepper } = this.hit;
    this.startTime = stepper.time;
    this.startForce = motion.totalForce();
    this.startRate = motion.totalForceRate();
    this.greatest = Math.max(this.greatest, this.startForce);
  }

  atStepEnd(): void {
    const { motion, stepper } = this.hit;
    const endForce = motion.totalForce();
    const endRate = motion.totalForceRate();
    this.greatest = Math.max(this.greatest, endForce);
    if (this.startRate > 0 && endRate < 0) {
      const h = stepper.time - this.startTime;
      const inside = cubicMaximum(this.startForce, h * this.startRate, endForce, h * endRate);
      this.greatest = Math.max(this.greatest, inside);
    }
  }
}

/** Greatest value on 0…1 of the cubic with values f0, f1 and slopes s0 > 0, s1 < 0 at the ends. */
function cubicMaximum(f0: number, s0: number, f1: number, s1: number): number {
  const c2 = 3 * (f1 - f0) - 2 * s0 - s1;
  const c3 = s0 + s1 - 2 * (f1 - f0);
  // Root of s0 + 2·c2·x + 3·c3·x² in 0…1, in the form that does not cancel: the slope falls through 0 there.
  const x = s0 / (Math.sqrt(c2 * c2 - 3 * c3 * s0) - c2);
  return f0 + x * (s0 + x * (c2 + x * c3));
}
