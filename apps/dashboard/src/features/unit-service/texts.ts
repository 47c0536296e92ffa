import type { FieldSpec } from '../../shared/ui/form/field-spec.js';
import type { ServiceEntry } from './api/unit-service.js';

const KIND: Record<ServiceEntry['kind'], string> = { service: 'Service', hours: 'Riding' };

export const texts = {
  title: (unit: string) => `Service of ${unit}`,
  lead: 'How much it was ridden since its last service, and what that is made of.',
  link: 'Service',
  now: 'Since the last service',
  lastService: (day: string) => `Last service on ${day}; that day counts as ridden after it.`,
  neverServiced: 'No service is recorded: everything that is recorded counts.',
  hours: 'Riding',
  interval: 'Interval',
  left: 'Left',
  overdue: (hours: string) => `overdue by ${hours} h`,
  noInterval: 'not entered',
  madeOf: 'What the hours are made of',
  timed: (runs: string) => `${runs} with a time, void ones too`,
  assumedRuns: (runs: string) => `${runs} without one, each at the mean of its track`,
  entered: 'riding entered by hand',
  uncounted: (runs: string) => `${runs} without a time on a track that has none: not counted`,
  notCounted: 'The ways between the runs are counted only where somebody has entered them.',
  record: 'Record a service or riding',
  save: 'Record it',
  manual: 'From the unit’s manual',
  saveCare: 'Save these figures',
  history: 'What was recorded',
  historyNone: 'Nothing is recorded yet.',
  kind: KIND,
  hoursOf: (hours: string) => `${hours} h`,
  by: (who: string) => `by ${who}`,
  takenBack: 'taken back',
  takesBack: 'takes back an entry',
  takeBack: 'Take it back',
  takeBackOf: (entry: string) => `Take back: ${entry}`,
  takeBackLead: 'It stays in the list, with your reason.',
  why: 'Why it is wrong',
  older: 'Show older ones',
};

export const ENTRY_FIELDS: readonly FieldSpec[] = [
  {
    name: 'kind',
    label: 'What',
    kind: 'choice',
    choices: [
      { value: 'service', label: 'A service was done' },
      { value: 'hours', label: 'Riding that no run tells of' },
    ],
  },
  { name: 'day', label: 'Day', kind: 'date', required: true },
  { name: 'doneBy', label: 'Who', kind: 'text', required: true },
];

export const RIDING_FIELD: FieldSpec = {
  name: 'ridingHours',
  label: 'Riding',
  kind: 'number',
  unit: 'h',
  required: true,
};

export const NOTE_FIELD: FieldSpec = { name: 'note', label: 'Note', kind: 'long' };

export const CARE_FIELDS: readonly FieldSpec[] = [
  {
    name: 'serviceIntervalHours',
    label: 'Riding between two services',
    kind: 'number',
    unit: 'h',
    hint: 'Empty: not known',
  },
  {
    name: 'capTorqueNm',
    label: 'Torque of the air cap',
    kind: 'number',
    unit: 'N·m',
    hint: 'Empty: work orders say to look it up',
  },
];
