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
