import type { FieldSpec } from '../../shared/ui/form/field-spec.js';
import type { SpacerMovement } from './api/spacers.js';
import { withUnit } from '../../shared/format/with-unit.js';

const REASON: Record<SpacerMovement['reason'], string> = {
  counted: 'Counted',
  bought: 'Bought',
  lost: 'Lost or broken',
  'put in': 'Put into a unit',
  'taken out': 'Taken out of a unit',
  reversed: 'Reversed',
};

export const texts = {
  title: 'Spacers in stock',
  lead: 'How many of each size lie in the box. Every change is recorded; a wrong one is reversed, not erased.',
  none: 'No spacers yet',
  noneLead: 'Enter forks and shocks first: each takes spacers of its own size.',
  caption: 'Spacers by size',
  size: 'Size',
  inStock: 'In stock',
  fits: 'Fits',
  sizeOf: (kind: 'fork' | 'shock', ml: string) =>
    `${kind === 'fork' ? 'Fork' : 'Shock'}, ${withUnit(ml, 'mL')}`,
  noUnit: 'no unit of the team',
  record: 'Record a count or a movement',
  save: 'Record it',
  history: 'What was recorded',
  historyNone: 'Nothing is recorded yet: count what lies in the box.',
  reason: REASON,
  after: (inStock: string) => `${inStock} in stock then`,
  reversed: 'reversed',
  reverse: 'Reverse it',
  reverseOf: (movement: string) => `Reverse: ${movement}`,
  reverseLead: 'Makes an opposite movement; both stay.',
  why: 'Why it is wrong',
  older: 'Show older ones',
  /** A movement in a line: counted, fork 10.0 mL, +4. */
  movement: (reason: string, size: string, change: string) => `${reason} · ${size} · ${change}`,
};

export const MOVEMENT_FIELDS: readonly FieldSpec[] = [
  {
    name: 'reason',
    label: 'What happened',
    kind: 'choice',
    choices: (['counted', 'bought', 'lost', 'put in', 'taken out'] as const).map((value) => ({
      value,
      label: REASON[value],
    })),
  },
  { name: 'spacers', label: 'How many', kind: 'whole', required: true },
  { name: 'note', label: 'Note', kind: 'text' },
];
