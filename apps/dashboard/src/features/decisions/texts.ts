import { formatCount } from '../../shared/format/numbers.js';
import type { Decision } from '../../shared/http/reads/decisions.js';

const OUTCOMES: Readonly<Record<NonNullable<Decision['outcome']>, string>> = {
  kept: 'Kept',
  'taken back': 'Taken back',
  superseded: 'Superseded',
};

export const texts = {
  title: 'Decisions',
  lead: 'What was changed, why, what was expected, and what the runs since have shown.',
  link: 'Decisions',
  filter: 'Show',
  bike: 'Bike',
  rider: 'Rider',
  track: 'Track',
  all: 'all',
  open: 'Open',
  openNone: 'Nothing is open here.',
  settled: 'Settled',
  settledNone: 'Nothing is settled yet.',
  none: 'No decisions yet',
  noneLead: 'Every change of a set-up makes one.',
  more: 'Show earlier ones',
  exportCsv: 'Export as CSV',
  exportJson: 'Export as JSON',
  by: (name: string) => `by ${name}`,
  someone: 'somebody who has left',
  allTracks: 'for all tracks',
  onBaseline: 'from the baseline',
  onPlan: 'from a test plan',
  evidence: (runs: number) => `on ${formatCount(runs, 'run')}`,
  runsSince: (runs: number, voided: number) =>
    `${formatCount(runs, 'run')} since${voided === 0 ? '' : `, ${voided} void`}`,
  fork: 'Fork',
  shock: 'Shock',
  expected: 'expected',
  observed: 'observed',
  sag: 'sag',
  risk: 'risk a run',
  nothingExpected: 'Nothing was computed for this one.',
  outcome: OUTCOMES,
  forOutcome: 'What came of it?',
};
