import { airSpring, reboundStep } from '@loamledger/spring';
import type { Fill } from './fill.js';
import { sceneOf, type Mount } from './mount.js';

/** Which way to look for rebound; null where the spring has no sag to return from. */
export type Rebound = 'slower' | 'faster' | 'keep' | null;

/** What the changed spring asks of the rebound. @throws SpringInputError for what cannot be. */
export function reboundFor(mount: Mount, now: Fill, proposed: Fill): Rebound {
  const spring = (fill: Fill) => airSpring(mount.unit, sceneOf(mount, fill).fill);
  const step = reboundStep(spring(now), spring(proposed), mount.end);
  return step.status === 'told' ? step.direction : null;
}
