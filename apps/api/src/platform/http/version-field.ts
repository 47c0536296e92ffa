import { NumberField } from './fields.js';

/** The version of a changeable thing: its ETag begins with it, and either is sent back as If-Match. */
export const VersionField = (): PropertyDecorator =>
  NumberField({
    description: 'Version; the ETag begins with it.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1e9,
    example: 1,
  });
