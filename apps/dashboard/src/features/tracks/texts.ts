import type { FieldSpec } from '../../shared/ui/form/field-spec.js';

export const texts = {
  title: 'Tracks',
  add: 'Add a track',
  newTitle: 'New track',
  save: 'Save the track',
  none: 'No tracks yet',
  noneLead: 'Add the track you ride next, with the altitude of the place where you set pressures.',
  name: 'Track',
  altitude: 'Altitude',
  sections: 'Sections',
};

export const gateTexts = {
  title: 'Gates, to cut run times from a recording',
  lead: 'A line across the track at its start and one at its finish, each by its two ends. Draw it some metres wider than the track on both sides.',
  noPlace: 'As a map gives it: 46.50211, 8.10347',
};

const place = (name: string, label: string): FieldSpec => ({
  name,
  label,
  kind: 'text',
  hint: 'Latitude, longitude in degrees',
});

export const GATE_FIELDS: readonly FieldSpec[] = [
  place('startGate.from', 'Start gate, one end'),
  place('startGate.to', 'Start gate, other end'),
  place('finishGate.from', 'Finish gate, one end'),
  place('finishGate.to', 'Finish gate, other end'),
];

export const TRACK_FIELDS: readonly FieldSpec[] = [
  { name: 'name', label: 'Name', kind: 'text', required: true },
  {
    name: 'altitudeM',
    label: 'Altitude',
    kind: 'number',
    unit: 'm',
    required: true,
    hint: 'Of the place where pressures are set',
  },
  { name: 'sections', label: 'Sections', kind: 'long', hint: 'In riding order, one a line; may be empty' },
  { name: 'note', label: 'Note', kind: 'long' },
];
