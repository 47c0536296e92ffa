import { describe, expect, it } from 'vitest';
import { obviousErrors, type FieldSpec } from './field-spec.js';

const fields: FieldSpec[] = [
  { name: 'name', label: 'Name', kind: 'text', required: true },
  { name: 'fork.sagLowPct', label: 'Least sag', kind: 'number' },
];

describe('what a form can tell by itself', () => {
  it('a word where a figure belongs, under the path of the message', () => {
    expect(obviousErrors(fields, { name: 'A', fork: { sagLowPct: 'soft' } })).toEqual({
      'fork.sagLowPct': 'Must be a number',
    });
  });

  it('a needed field left empty', () => {
    expect(obviousErrors(fields, { name: ' ', fork: { sagLowPct: '15' } })).toEqual({ name: 'Needed' });
  });

  it('leaves ranges to the API', () => {
    expect(obviousErrors(fields, { name: 'A', fork: { sagLowPct: '4000' } })).toEqual({});
  });
});
