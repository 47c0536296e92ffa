import type { WorkOrder } from './api/work-orders.js';
import { withUnit } from '../../shared/format/with-unit.js';

const STATE: Record<WorkOrder['state'], string> = {
  open: 'to be done',
  done: 'done',
  replaced: 'not done, and replaced by a newer set-up',
};

export const texts = {
  title: (bike: string) => `Work order: ${bike}`,
  lead: (made: string, who: string, revision: number) => `For revision ${revision}, made ${made} by ${who}.`,
  section: 'Work orders',
  sectionLead: 'From what was ridden last to the set-up now, step by step, to be printed and ticked.',
  make: 'Make a work order',
  none: 'None was made for this bike.',
  state: STATE,
  line: (revision: number, state: string, progress: string) => `Revision ${revision}: ${state}, ${progress}`,
  progress: (done: number, all: number) => `${done} of ${all} steps`,
  print: 'Print it',
  manualFirst: 'The maker’s manual, local rules and a qualified mechanic come first.',
  /** Pressures that were meant for other air than that of the track. */
  meantAt: (altitudeM: string, temperature: string) =>
    `The pressures are meant at ${withUnit(altitudeM, 'm')} and ${temperature}. In other air pump to what the pit says today.`,
  caution: 'Caution',
  fork: 'Fork',
  shock: 'Shock',
  end: (name: string, unit: string) => `${name}: ${unit}`,
  was: 'In it before',
  willBe: 'In it after',
  notKnown: 'not known',
  parts: 'Parts',
  noParts: 'No spacers go in.',
  partsIn: 'All spacers are in.',
  spacers: (needed: string, inStock: number) => `${needed}, ${inStock} in stock`,
  short: 'too few in stock',
  doneBy: (who: string, when: string) => `done by ${who}, ${when}`,
  notTicked: 'Not ticked',
  toBike: 'To the bike',
};
