import { describe, expect, it } from 'vitest';
import { addressOf } from './call.js';

describe('the address of a call', () => {
  it('has what stands in the brackets, made safe for a path', () => {
    expect(addressOf('/teams/{teamId}/runs/{id}', { path: { teamId: 'a', id: 'b/c d' } })).toBe(
      '/teams/a/runs/b%2Fc%20d',
    );
  });

  it('leaves out what is not asked, and repeats what has several values', () => {
    expect(addressOf('/runs', { query: { limit: 5, cursor: undefined, id: ['x', 'y&z'] } })).toBe(
      '/runs?limit=5&id=x&id=y%26z',
    );
    expect(addressOf('/runs', { query: { cursor: undefined } })).toBe('/runs');
  });
});
