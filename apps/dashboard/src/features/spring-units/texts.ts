import type { FieldSpec } from '../../shared/ui/form/field-spec.js';

export const texts = {
  title: 'Forks and shocks',
  add: 'Add a fork or shock',
  newTitle: 'New fork or shock',
  save: 'Save the unit',
  none: 'No forks or shocks yet',
  noneLead:
    'Add every air fork and air shock. Start from generic values; they are marked assumed until you measure or enter your own.',
  kind: 'Kind',
  fork: 'Fork',
  shock: 'Shock',
  limits: 'Limits, from the unit’s own manual',
  limitsHint:
    'Without limits nothing is recommended for this unit; nothing is ever recommended outside them.',
  start: 'Start from generic values',
  startHint: 'Invented, sized so that usual pressures give usual sag. Every figure is marked assumed.',
  startNone: 'choose to fill in',
  figures: 'Spring',
  fine: 'Bumper, damping, friction and heat',
  sourceOf: (figure: string) => `Where it comes from: ${figure}`,
  noLimits: 'no limits entered',
  limitsOf: (range: string, spacers: string) => `${range}, at most ${spacers}`,
  assumedCount: (assumed: number, all: number) =>
    assumed === 0 ? 'all figures measured or entered' : `${assumed} of ${all} figures assumed`,
  name: 'Unit',
  stroke: 'Stroke',
  stock: 'Spacers in stock',
  sources: 'Figures',
};

export const NAME_FIELDS: readonly FieldSpec[] = [
  { name: 'name', label: 'Name', kind: 'text', required: true, hint: 'As your team calls it' },
  {
    name: 'kind',
    label: texts.kind,
    kind: 'choice',
    choices: [
      { value: 'fork', label: texts.fork },
      { value: 'shock', label: texts.shock },
    ],
  },
];

export const LIMIT_FIELDS: readonly FieldSpec[] = [
  { name: 'minPressurePsi', label: 'Lowest pressure', kind: 'number', unit: 'psi' },
  { name: 'maxPressurePsi', label: 'Highest pressure', kind: 'number', unit: 'psi' },
  { name: 'maxSpacers', label: 'Most spacers', kind: 'whole' },
];
