import type { DemandReading } from './scale.js';

const KIND: Record<DemandReading['kind'], string> = {
  exact: 'read',
  atLeast: 'at least',
  atMost: 'at most',
};

export const texts = {
  axis: 'hit height, metres (log)',
  table: 'Every reading as a table',
  hint: 'Point at a reading, or step to a row and use the arrow keys, to see its run.',
  noReadings: 'no readings yet',
  kind: KIND,
  exact: 'reading',
  atLeast: 'at least this much (all travel used)',
  atMost: 'at most this much',
  voided: 'voided run',
  band: '90 of 100 runs expected here, median dashed',
  bottoms: 'set-up bottoms out here',
  rider: 'Rider',
  run: 'Run',
  height: 'Hit height, m',
  sort: 'Kind',
  counts: 'Counts',
  chance: 'How probable it was',
  pull: 'Moves the rider’s level',
  lookAgain: 'surprising: look again',
  notAsked: 'not counted',
  bound: 'a bound: not told',
  yes: 'yes',
  no: 'voided',
  rowName: (label: string, count: number) =>
    `${label}: ${count} ${count === 1 ? 'reading' : 'readings'}. Arrow keys step through them.`,
};
