import type { FieldSpec } from '../../shared/ui/form/field-spec.js';
import { withUnit } from '../../shared/format/with-unit.js';
import { wholeFigures } from '../../shared/format/whole-figures.js';

export const texts = {
  newTitle: (bike: string) => `Set up ${bike}`,
  fromPlan: (revision: number | undefined) =>
    revision === undefined
      ? 'Rests on a test plan.'
      : `Starts from revision ${revision}, and rests on the test plan it was ridden in.`,
  toComparison: 'What the plan told',
  newLead: 'Makes a new revision and a decision record. The one before stays, and can be taken back.',
  save: 'Save this set-up',
  fork: 'Fork',
  shock: 'Shock',
  limits: (range: string, spacers: string) => `Limits: ${range}, at most ${spacers}`,
  noLimits: 'No limits entered for this unit.',
  noLimitsWord: 'Check the manual.',
  whyTitle: 'Why',
  fillTitle: 'Where it was pumped, if not at the track',
  now: 'Set-up now',
  notSetUp: 'Not set up yet',
  notSetUpLead: 'Enter what is in the bike now; the reason can be “as found”.',
  change: 'Change the set-up',
  noShock: 'no air shock',
  history: 'What was changed, and why',
  historyNone: 'No changes yet.',
  since: (day: string) => `since ${day}`,
  pumpedAt: (altitude: string, temperature: string) =>
    `pumped at ${withUnit(altitude, 'm')} and ${temperature}`,
  revision: (number: number) => `Revision ${number}`,
  first: 'first set-up',
  nothing: 'nothing but the note',
  open: 'open',
  outcomeOf: 'What came of it',
  expected: 'Expected then',
  notExpected: 'no track',
  end: 'End',
  sag: 'Sag',
  median: 'Median hit',
  high: wholeFigures('95 % hit'),
  risk: 'Risk a run',
  decide: 'What came of it?',
  outcomeNote: 'What you saw',
  kept: 'Keep it',
  takeBack: 'Take it back',
  takeBackLead: 'Makes a new revision equal to the one before.',
  outcome: { kept: 'kept', 'taken back': 'taken back', superseded: 'superseded' } as Record<string, string>,
  units: 'Fork and shock in this bike',
  compare: 'Differences between two revisions',
  compareFrom: 'From',
  compareTo: 'To',
  compareSame: 'Nothing differs but the note.',
  goBack: 'Go back to this',
  goBackTo: (revision: number) => `Go back to this: revision ${revision}`,
  goBackLead: 'Makes a new revision equal to it; nothing is erased.',
  goBackWhy: 'Why it is put back',
};

const endFields = (end: 'fork' | 'shock'): readonly FieldSpec[] => [
  { name: `${end}.pressurePsi`, label: 'Pressure', kind: 'number', unit: 'psi', required: true },
  { name: `${end}.spacers`, label: 'Spacers', kind: 'whole', required: true },
  { name: `${end}.reboundClicks`, label: 'Rebound', kind: 'whole', unit: 'clicks from closed' },
  { name: `${end}.compressionClicks`, label: 'Compression', kind: 'whole', unit: 'clicks from closed' },
];

export const FORK_FIELDS = endFields('fork');
export const SHOCK_FIELDS = endFields('shock');

export const FILL_FIELDS: readonly FieldSpec[] = [
  { name: 'filledAltitudeM', label: 'Altitude there', kind: 'number', unit: 'm' },
  { name: 'filledTemperatureC', label: 'Air temperature there', kind: 'number', unit: '°C' },
];

export const WHY_FIELDS: readonly FieldSpec[] = [
  {
    name: 'reason',
    label: 'Reason',
    kind: 'long',
    required: true,
    hint: 'What should get better? You will read this again when it is kept or taken back.',
  },
  { name: 'note', label: 'Note', kind: 'long' },
];
