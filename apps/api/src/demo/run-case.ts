import type { Ambient } from '@loamledger/spring';
import type { BikeKey } from './bikes.js';
import type { DemoDay } from './scenario.js';
import type { TrueSetUp } from './set-ups-in-force.js';

/** All that is settled before a run starts. */
export interface RunCase {
  readonly day: DemoDay;
  readonly ambient: Ambient;
  readonly bike: BikeKey;
  readonly setUp: TrueSetUp;
  /** Counts the rider's runs on that day from 0. */
  readonly round: number;
}
