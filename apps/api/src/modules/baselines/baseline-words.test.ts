import { describe, expect, it } from 'vitest';
import { sharpenSentence } from './baseline-words.js';

const evidence = {
  level: 'rider here' as const,
  message: '',
  lowerBoundOnly: false,
  counts: {
    ownHere: 8,
    teamHere: 43,
    ownElsewhere: 45,
    exactHere: 30,
    atLeastHere: 0,
    atMostHere: 0,
    total: 219,
  },
};
const hit = (low: number, high: number) => ({ low, high });
const sentence = (now: [number, number], then: [number, number]) =>
  sharpenSentence({ now: hit(...now), options: [{ kind: 'this rider here', then: hit(...then) }] }, evidence);

describe('what would sharpen a forecast', () => {
  it('names both ranges where they differ as they are written', () => {
    expect(sentence([0.9, 1.6], [1, 1.4])).toBe(
      'Two runs by this rider here would narrow the 95 % hit from 0.90–1.60 m to 1.00–1.40 m.',
    );
    expect(sentence([0.84, 1.02], [0.846, 1.02])).toContain('from 0.84–1.02 m to 0.85–1.02 m');
  });

  it('does not write the same range twice', () => {
    expect(sentence([0.836, 1.024], [0.844, 1.016])).toBe(
      'Two runs by this rider here would narrow the 95 % hit, 0.84–1.02 m, by less than 2 cm.',
    );
  });
});
