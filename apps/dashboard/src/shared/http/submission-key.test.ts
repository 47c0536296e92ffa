import { describe, expect, it } from 'vitest';
import { SubmissionKey } from './submission-key.js';

const counted = () => {
  let count = 0;
  return new SubmissionKey(() => `key ${(count += 1)}`);
};

describe('submission key', () => {
  it('stays the same while the same message is sent again', () => {
    const key = counted();
    expect(key.for({ travelMm: 140 })).toBe(key.for({ travelMm: 140 }));
  });

  it('changes when the message was corrected', () => {
    const key = counted();
    expect(key.for({ travelMm: 140 })).not.toBe(key.for({ travelMm: 141 }));
  });

  it('changes once the message was taken: two equal runs are two runs', () => {
    const key = counted();
    const first = key.for({ travelMm: 140 });
    key.taken();
    expect(key.for({ travelMm: 140 })).not.toBe(first);
  });
});
