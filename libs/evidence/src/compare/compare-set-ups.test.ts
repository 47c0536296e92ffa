import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareSetUps } from './compare-set-ups.js';
import type { ComparisonRequest, ComparisonRun } from './comparison-request.js';

const run = (arm: string, position: number, time: number | null, voided = false): ComparisonRun => ({
  arm,
  rider: 'one',
  session: 'one',
  position,
  time,
  voided,
});

const ask = (runs: readonly ComparisonRun[], more: Partial<ComparisonRequest> = {}) =>
  compareSetUps({ runs, current: 'A', margin: 0.01, history: [], look: null, trend: 'linear', ...more });

const HISTORY = Array.from({ length: 12 }, (_, i) => ({ variance: 1.5e-4 * (0.7 + 0.05 * i), df: 4 }));

describe('every degenerate case has a sentence of its own', () => {
  it.each<[string, readonly ComparisonRun[], RegExp]>([
    ['no runs', [], /No runs yet/],
    ['all void', [run('A', 1, 100, true), run('B', 2, 101, true)], /Every run is void/],
    ['no times', [run('A', 1, null), run('B', 2, null)], /No run that counts has a time/],
    ['one set-up', [run('A', 1, 100), run('A', 2, 101)], /Only one set-up/],
    [
      'current set-up without a time',
      [run('A', 1, null), run('B', 2, 100)],
      /current set-up has no timed run/,
    ],
  ])('%s', (_, runs, sentence) => {
    const comparison = ask(runs);
    expect(comparison.status).toBe('nothing to compare');
    expect(comparison.sentences[0]).toMatch(sentence);
    for (const arm of comparison.arms) expect(arm.verdict).toBe('no verdict');
  });

  it('one run a set-up', () => {
    const [arm] = ask([run('A', 1, 100), run('B', 2, 98)]).arms;
    expect(arm?.verdict).toBe('no verdict');
    expect(arm?.sentence).toMatch(/One run a set-up/);
  });

  it('one run a set-up and no history, where the order could be told apart', () => {
    const [arm] = ask([run('A', 1, 100), run('B', 2, 98), run('A', 3, 101)]).arms;
    expect(arm?.verdict).toBe('no verdict');
    expect(arm?.sentence).toMatch(/no history/);
  });

  it('names the rider where each rode one set-up alone, and the session where each had one', () => {
    const by = (rider: string, session: string, arm: string, position: number, time: number) => ({
      ...run(arm, position, time),
      rider,
      session,
    });
    const reasonOf = (runs: readonly ComparisonRun[]) => ask(runs, { trend: 'linear' }).arms[0]?.sentence;
    const apart = (one: readonly [string, string], other: readonly [string, string]) => [
      by(...one, 'A', 1, 100),
      by(...one, 'A', 2, 101),
      by(...other, 'B', 1, 98),
      by(...other, 'B', 2, 99),
    ];
    expect(reasonOf(apart(['one', 'day'], ['two', 'day']))).toContain('told from those of the rider');
    expect(reasonOf(apart(['one', 'day'], ['one', 'next day']))).toContain('told from those of the session');
  });

  it.each([
    [0, 'No past sessions: the scatter is judged from these runs alone.'],
    [3, 'Past sessions: 3 of the 8 that are needed; until then the scatter is judged from these runs alone.'],
    [8, 'Past sessions: 16 of the 24 degrees of freedom that are needed; until then'],
  ])(
    'a history of %d sessions of two degrees of freedom is too short, and says what is lacking',
    (sessions, says) => {
      const history = Array.from({ length: sessions }, () => ({ variance: 1.5e-4, df: 2 }));
      const runs = [run('A', 1, 100), run('B', 2, 98), run('B', 3, 99), run('A', 4, 101)];
      expect(ask(runs, { history }).sentences.join(' ')).toContain(says);
      expect(ask(runs, { history: HISTORY }).sentences.join(' ')).not.toContain('sessions: ');
    },
  );

  it('with a history even one run can be judged, and says that the scatter is borrowed', () => {
    const comparison = ask([run('A', 1, 100), run('B', 2, 94), run('A', 3, 101)], { history: HISTORY });
    expect(comparison.variance?.source).toBe('history alone');
    expect(comparison.arms[0]?.verdict).not.toBe('no verdict');
    expect(comparison.arms[0]?.sentence).toMatch(/past sessions/);
  });

  it('a tie of two times is "cannot tell", never "no difference"', () => {
    const tied = [run('A', 1, 100), run('B', 2, 100), run('B', 3, 101), run('A', 4, 101)];
    expect(ask(tied, { history: HISTORY }).arms[0]?.verdict).toBe('cannot tell yet');
  });

  it('identical times say nothing about scatter', () => {
    const [arm] = ask([1, 2, 3, 4, 5, 6].map((place) => run(place % 2 === 0 ? 'B' : 'A', place, 100))).arms;
    expect(arm?.verdict).toBe('no verdict');
    expect(arm?.sentence).toMatch(/last digit of the timer/);
  });

  it('too few degrees of freedom: an interval but no verdict', () => {
    const [arm] = ask([run('A', 1, 100), run('B', 2, 90), run('B', 3, 90.2), run('A', 4, 100.3)]).arms;
    expect(arm?.verdict).toBe('cannot tell yet');
    expect(arm?.sentence).toMatch(/Only 1 degree of freedom/);
    expect(arm?.interval).not.toBeNull();
  });

  it('too few degrees of freedom, however small the scatter: it takes the runs that make them enough', () => {
    const fine = fc.integer({ min: -9, max: 9 }).map((step) => 1 + 1e-5 * step);
    fc.assert(
      fc.property(
        fc.constantFrom('ABBA', 'ABBAB', 'ABCCBA'),
        fc.array(fine, { minLength: 6 }),
        (order, noise) => {
          const runs = [...order].map((arm, i) =>
            run(arm, i + 1, 100 * (arm === 'A' ? 1 : 0.999) * (noise[i] ?? 1)),
          );
          for (const { df, needed, sentence } of ask(runs).arms) {
            if (df === null) continue;
            expect(sentence).toMatch(/Only [12] degree/);
            expect(sentence).toMatch(/it takes 1 more to find .* 8 times in 10, 1 more to show/);
            const more = needed?.forDifference ?? 0;
            expect(df + new Set(order).size * more).toBeGreaterThanOrEqual(3);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('a set-up that was ridden in a session of its own cannot be told from that session', () => {
    const runs = [run('A', 1, 100), run('A', 2, 101), run('A', 3, 100.5), run('A', 4, 100.2)];
    const other = [run('B', 1, 98), run('B', 2, 99), run('B', 3, 98.4)].map((entry) => ({
      ...entry,
      session: 'two',
    }));
    const [arm] = ask([...runs, ...other]).arms;
    expect(arm?.verdict).toBe('no verdict');
    expect(arm?.sentence).toMatch(/cannot be told from those of the session/);
  });

  it('missing times are counted and said', () => {
    const runs = [1, 2, 3, 4, 5, 6, 7, 8].map((place) =>
      run('ABBAABBA'[place - 1] as string, place, 100 + 0.3 * (place % 3)),
    );
    const comparison = ask([...runs, run('A', 9, null)]);
    expect(comparison.counts.untimed).toBe(1);
    expect(comparison.sentences.join(' ')).toMatch(/1 run without a time/);
  });
});

describe('verdicts', () => {
  const ORDER = 'ABBABAABABBABAAB';
  const timed = (effect: number, scatter: readonly number[]): ComparisonRun[] =>
    [...ORDER].map((arm, i) =>
      run(arm, i + 1, 180 * Math.exp((arm === 'B' ? effect : 0) + 0.001 * i + (scatter[i] ?? 0))),
    );
  /** Scatter of about half a per cent without a pattern that arms or trend would see. */
  const SCATTER = [3, -2, -4, 1, 5, -1, -3, 2, 0, 4, -5, 2, -1, -2, 3, -2].map((value) => 0.0015 * value);

  it('faster and slower are each other’s mirror image', () => {
    expect(ask(timed(-0.03, SCATTER)).arms[0]?.verdict).toBe('faster');
    expect(ask(timed(0.03, SCATTER)).arms[0]?.verdict).toBe('slower');
  });

  it('no practical difference is shown, not assumed: a small margin takes it back', () => {
    expect(ask(timed(0, SCATTER), { margin: 0.02 }).arms[0]?.verdict).toBe('no practical difference');
    expect(ask(timed(0, SCATTER), { margin: 0.001 }).arms[0]?.verdict).toBe('cannot tell yet');
  });

  it('a later look asks for more where nobody knows how many will come', () => {
    const alphas = [1, 2, 3].map((number) => ask(timed(0, SCATTER), { look: { number, of: null } }).alpha);
    expect(alphas).toEqual([0.025, 0.05 / 6, 0.05 / 12]);
  });

  it('a look at a plan whose looks are agreed asks for less the later it is, and says what is needed in the end', () => {
    // So much scatter that no look can tell.
    const scatter = SCATTER.map((share) => 5 * share);
    const looks = [1, 2, 3, 4].map((number) => ask(timed(0, scatter), { look: { number, of: 4 } }));
    const alphas = looks.map(({ alpha }) => alpha);
    expect(alphas).toEqual(alphas.toSorted((a, b) => a - b));
    expect(alphas.at(-1)).toBeGreaterThan(0.039);
    const [first, ...later] = looks.map(({ arms }) => arms[0]?.needed);
    expect(first).toMatchObject({ forDifference: expect.any(Number) as number });
    expect(later).toEqual(later.map(() => first));
  });

  it('undecided although its runs should have been enough, it does not ask for none more', () => {
    const scatter = SCATTER.map((share) => 1.2 * share);
    const [arm] = ask(timed(0.007, scatter)).arms;
    expect(arm?.verdict).toBe('cannot tell yet');
    expect(arm?.needed?.forDifference).toBe(0);
    expect(arm?.sentence).toContain('it takes as many as these to find a difference as large as the margin');
  });

  it('the unit of time has no influence', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10, noNaN: true }), (unit) => {
        const runs = timed(0.01, SCATTER);
        const scaled = runs.map((entry) => ({ ...entry, time: unit * (entry.time ?? 0) }));
        const [a, b] = [ask(runs).arms[0], ask(scaled).arms[0]];
        // Logs of about 5 with a rounding of 1e-15, differences of 0.01.
        expect(b?.difference).toBeCloseTo(a?.difference ?? 0, 12);
        expect(b?.pDifference).toBeCloseTo(a?.pDifference ?? 0, 9);
      }),
      { numRuns: 20 },
    );
  });

  it('exchanging the two set-ups turns the sign and keeps the P value', () => {
    const forth = ask(timed(0.01, SCATTER)).arms[0];
    const back = ask(timed(0.01, SCATTER), { current: 'B' }).arms[0];
    expect(back?.difference).toBeCloseTo(-(forth?.difference ?? 0), 12);
    expect(back?.pDifference).toBeCloseTo(forth?.pDifference ?? 0, 9);
  });

  it('counts void runs a set-up with the chance of such a split', () => {
    const runs = [...timed(0, SCATTER), ...[17, 18, 19].map((place) => run('B', place, 250, true))];
    const voids = ask(runs).voids.find(({ arm }) => arm === 'B');
    expect(voids).toMatchObject({ voided: 3, ridden: 11 });
    // Fisher's exact test of 3 of 11 against 0 of 8: 1 − … = C(11,3)/C(19,3) = 165/969 one-sided, no table opposite as rare.
    expect(voids?.p).toBeCloseTo(165 / 969 + 56 / 969, 9);
  });

  it('refuses impossible input by name', () => {
    expect(() => ask([run('A', 1, -5)])).toThrowError(/runs\[0\].time is -5 \(s\)/);
    expect(() => ask([run('A', 0, 5)])).toThrowError(/runs\[0\].position/);
    expect(() => ask([], { margin: 0 })).toThrowError(/margin/);
    expect(() => ask([], { look: { number: 0, of: null } })).toThrowError(/look/);
  });
});
