import { describe, expect, it } from 'vitest';
import { stepNow, type Entered } from './steps.js';

const NOTHING: Entered = {
  rider: null,
  fork: null,
  shock: null,
  bike: null,
  track: null,
  setup: null,
  run: null,
};

describe('the first steps', () => {
  it('begin with the rider', () => expect(stepNow(NOTHING, new Set())).toBe('rider'));

  it('go on behind what is entered, and come back to what is missing before it', () => {
    const entered = { ...NOTHING, rider: 'Rider A', shock: 'Shock 1' };
    expect(stepNow(entered, new Set())).toBe('fork');
    expect(stepNow({ ...entered, fork: 'Fork 1' }, new Set())).toBe('bike');
  });

  it('pass over what is left out', () => {
    expect(stepNow({ ...NOTHING, rider: 'A', fork: 'F' }, new Set(['shock']))).toBe('bike');
  });
});
