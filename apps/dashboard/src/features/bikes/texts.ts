import type { FieldSpec } from '../../shared/ui/form/field-spec.js';
import { SOURCE_CHOICES } from '../../shared/ui/sources.js';

export const texts = {
  title: 'Bikes',
  add: 'Add a bike',
  newTitle: 'New bike',
  save: 'Save the bike',
  none: 'No bikes yet',
  noneLead:
    'Add each bike with its rider, its fork and its shock. The frame’s leverage table turns shock travel into wheel travel.',
  needsFirst: 'A bike needs a rider and a fork. Add those first.',
  name: 'Bike',
  rider: 'Rider',
  category: 'Built for',
  fork: 'Fork',
  shock: 'Shock',
  noShock: 'no air shock',
  choose: 'choose',
  start: 'Start from usual figures',
  startHint:
    'Choose fork and shock first. Invented figures of its kind, with a leverage table for the shock’s stroke; every one is marked assumed.',
  startNone: 'choose to fill in',
  frame: 'Frame and masses',
  stance: 'Stance of rider and bike',
  stanceHint: 'From two scales in the attack position. Left empty, it is assumed and the answers say so.',
  leverage: 'Leverage table',
  badLine: (line: number) => `Line ${line} must be a shock travel and a ratio, as in: 32.5 2.75`,
  sources: 'Where the figures come from',
  travel: 'Travel front / rear',
};

export const FRAME_FIELDS: readonly FieldSpec[] = [
  { name: 'frontWheelTravelMm', label: 'Front wheel travel', kind: 'number', unit: 'mm', required: true },
  {
    name: 'rearWheelTravelMm',
    label: 'Rear wheel travel',
    kind: 'number',
    unit: 'mm',
    required: true,
    hint: '0 without a shock',
  },
  { name: 'headAngleDeg', label: 'Head angle', kind: 'number', unit: '°', required: true },
  { name: 'wheelbaseMm', label: 'Wheelbase', kind: 'number', unit: 'mm', required: true },
  { name: 'massKg', label: 'Mass of the bike', kind: 'number', unit: 'kg', required: true },
  {
    name: 'frontUnsprungMassKg',
    label: 'Front unsprung mass',
    kind: 'number',
    unit: 'kg',
    required: true,
    hint: 'Wheel, brake, lower legs',
  },
  { name: 'rearUnsprungMassKg', label: 'Rear unsprung mass', kind: 'number', unit: 'kg', required: true },
];

export const STANCE_FIELDS: readonly FieldSpec[] = [
  { name: 'frontLoadSharePct', label: 'Load on the front wheel', kind: 'number', unit: '%' },
  { name: 'centreOfMassHeightMm', label: 'Centre of mass above ground', kind: 'number', unit: 'mm' },
  { name: 'centreOfMassToRearMm', label: 'Centre of mass ahead of rear contact', kind: 'number', unit: 'mm' },
];

export const LEVERAGE_FIELDS: readonly FieldSpec[] = [
  {
    name: 'leverageTable',
    label: texts.leverage,
    kind: 'long',
    hint: 'A line for each point: shock travel in mm, then wheel travel per shock travel, from 0 to the full stroke',
  },
];

export const SOURCE_FIELDS: readonly FieldSpec[] = [
  { name: 'sources.massKg', label: 'Mass of the bike', kind: 'choice', choices: SOURCE_CHOICES },
  {
    name: 'sources.frontUnsprungMassKg',
    label: 'Front unsprung mass',
    kind: 'choice',
    choices: SOURCE_CHOICES,
  },
  {
    name: 'sources.rearUnsprungMassKg',
    label: 'Rear unsprung mass',
    kind: 'choice',
    choices: SOURCE_CHOICES,
  },
  { name: 'sources.headAngleDeg', label: 'Head angle', kind: 'choice', choices: SOURCE_CHOICES },
  { name: 'sources.leverageTable', label: texts.leverage, kind: 'choice', choices: SOURCE_CHOICES },
];
