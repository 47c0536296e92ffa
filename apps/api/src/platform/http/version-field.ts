import { NumberField } from './fields.js';

/** The version of a changeable thing: its ETag, to be sent back as If-Match. */
export const VersionField = (): PropertyDecorator =>
  NumberField({
    description: 'Version, as in the ETag.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e9,
    example: 1,
  });
