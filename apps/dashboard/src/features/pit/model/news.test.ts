import { describe, expect, it } from 'vitest';
import { newsOf } from './news.js';

const names = new Map([
  ['a', 'Fern, enduro'],
  ['b', 'Moss, trail'],
]);
const change = (kind: string, bikeId: string | null) => ({ kind, bikeId, riderId: null });
const news = (...changes: ReturnType<typeof change>[]) => newsOf(changes, (id) => names.get(id));

describe('what is announced of changes', () => {
  it('names the bike once, by the most telling change', () => {
    expect(news(change('decision', 'a'), change('setup', 'a'))).toBe('Fern, enduro has a new set-up.');
    expect(news(change('run', 'a'), change('run', 'a'))).toBe('A run on Fern, enduro was logged.');
  });

  it('names every bike', () => {
    expect(news(change('run', 'a'), change('run', 'b'))).toBe(
      'A run on Fern, enduro was logged. A run on Moss, trail was logged.',
    );
  });

  it("is silent about what is no bike's, of no known bike, or of no interest", () => {
    expect(news(change('track', null), change('run', 'c'), change('bike', 'a'))).toBeNull();
    expect(news()).toBeNull();
  });
});
