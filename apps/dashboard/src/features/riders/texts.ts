import type { FieldSpec } from '../../shared/ui/form/field-spec.js';
import { SOURCE_CHOICES } from '../../shared/ui/sources.js';
import { wholeFigures } from '../../shared/format/whole-figures.js';

export const texts = {
  title: 'Riders',
  add: 'Add a rider',
  save: 'Save the rider',
  none: 'No riders yet',
  noneLead:
    'Add each rider with their mass ready to ride: clothes, protectors, pack and water. Sag and hits depend on it.',
  newTitle: 'New rider',
  name: 'Name',
  mass: 'Mass ready to ride',
  risk: 'Accepted risk of bottoming out',
  forkSag: 'Fork sag wanted',
  shockSag: 'Shock sag wanted',
  fork: 'Fork wishes',
  shock: 'Shock wishes',
};

export const RIDER_FIELDS: readonly FieldSpec[] = [
  { name: 'name', label: texts.name, kind: 'text', required: true },
  {
    name: 'readyMassKg',
    label: texts.mass,
    kind: 'number',
    unit: 'kg',
    required: true,
    hint: 'Clothes, protectors, pack and water included',
  },
  { name: 'readyMassSource', label: 'Where the mass comes from', kind: 'choice', choices: SOURCE_CHOICES },
  {
    name: 'acceptedRiskPct',
    label: texts.risk,
    kind: 'number',
    unit: '% a run',
    required: true,
    hint: 'Common practice, no source: 5',
  },
];

const wishes = (end: 'fork' | 'shock'): readonly FieldSpec[] => [
  { name: `${end}.sagLowPct`, label: 'Sag from', kind: 'number', unit: '% of stroke', required: true },
  { name: `${end}.sagHighPct`, label: 'Sag to', kind: 'number', unit: '% of stroke', required: true },
  {
    name: `${end}.reservePct`,
    label: wholeFigures('Reserve at the 95 % hit'),
    kind: 'number',
    unit: '% of stroke',
    required: true,
  },
];

export const FORK_FIELDS = wishes('fork');
export const SHOCK_FIELDS = wishes('shock');
