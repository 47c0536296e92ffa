import { radian } from '@loamledger/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniformNumbers } from '../numerics/random.js';
import type { Fix } from './crossings.js';
import type { Gate, Place } from './gate-plane.js';
import { runsBetween } from './runs-between.js';

const EARTH_RADIUS = 6_371_008.8;
const LONGEST = 7_200;

/** A straight track: places by the metres along it and beside it, in any direction from any point of the earth. */
function straightTrack(latitudeDeg: number, longitudeDeg: number, headingDeg: number) {
  const [latitude, longitude, heading] = [latitudeDeg, longitudeDeg, headingDeg].map(
    (degrees) => (degrees * Math.PI) / 180,
  ) as [number, number, number];
  const place = (along: number, beside = 0): Place => {
    const north = along * Math.cos(heading) - beside * Math.sin(heading);
    const east = along * Math.sin(heading) + beside * Math.cos(heading);
    return {
      latitude: radian(latitude + north / EARTH_RADIUS),
      longitude: radian(longitude + east / (EARTH_RADIUS * Math.cos(latitude))),
    };
  };
  const gate = (along: number): Gate => ({ from: place(along, -20), to: place(along, 20) });
  return { place, gate };
}

const { place, gate } = straightTrack(46.5, 8.1, 70);
const [start, finish] = [gate(0), gate(600)];

/** Fixes of a rider whose way along the track is a function of time. */
const ride = (way: (time: number) => number, from: number, to: number, every: number, beside = 0): Fix[] =>
  Array.from({ length: Math.floor((to - from) / every) + 1 }, (_, i) => {
    const time = from + i * every;
    return { ...place(way(time), beside), time };
  });
const timed = (segments: readonly (readonly Fix[])[], positionSd = 3) =>
  runsBetween({ segments, start, finish, positionSd, longest: LONGEST });

describe('runs in a recording', () => {
  it('on a straight line at a constant speed have the exact time, wherever on the earth and however sampled', () => {
    fc.assert(
      fc.property(
        fc.record({
          latitude: fc.double({ min: -65, max: 65, noNaN: true }),
          longitude: fc.double({ min: -180, max: 180, noNaN: true }),
          heading: fc.double({ min: 0, max: 360, noNaN: true }),
          speed: fc.double({ min: 3, max: 20, noNaN: true }),
          every: fc.double({ min: 0.1, max: 4, noNaN: true }),
          phase: fc.double({ min: 0, max: 1, noNaN: true }),
        }),
        ({ latitude, longitude, heading, speed, every, phase }) => {
          const track = straightTrack(latitude, longitude, heading);
          const from = -10 - phase;
          const fixes = Array.from({ length: Math.ceil((800 / speed + 20) / every) }, (_, i) => {
            const time = from + i * every;
            return { ...track.place(speed * time), time };
          });
          const [run, ...others] = runsBetween({
            segments: [fixes],
            start: track.gate(0),
            finish: track.gate(600),
            positionSd: 3,
            longest: LONGEST,
          });
          expect(others).toEqual([]);
          // A degree of longitude is shorter at the finish than at the start, which the invented track is not drawn for.
          expect(run?.time).toBeCloseTo(600 / speed, 2);
          expect(run?.startedAt).toBeCloseTo(0, 4);
        },
      ),
    );
  });

  it('are as many as there are, and neither waiting at the start nor the way up makes one', () => {
    const speed = 8;
    const down = (at: number) => ride((time) => speed * (time - at), at - 10, at + 90, 1);
    const up = (at: number) => ride((time) => 650 - 3 * (time - at), at, at + 240, 1);
    const waiting = (at: number) => ride((time) => 6 * Math.sin((time - at) / 9), at, at + 60, 1);
    const runs = timed([[...waiting(0), ...down(100), ...up(200), ...waiting(450), ...down(530)]]);
    expect(runs.map(({ startedAt }) => Math.round(startedAt))).toEqual([100, 530]);
    for (const { time } of runs) expect(time).toBeCloseTo(75, 2);
  });

  it('do not begin in one segment and go on over a hole in it, unless a gate is passed within each', () => {
    const fixes = ride((time) => 8 * time, -10, 90, 1);
    const hole = (from: number, to: number) => [
      fixes.filter(({ time }) => time <= from),
      fixes.filter(({ time }) => time >= to),
    ];
    expect(timed(hole(30, 50))).toHaveLength(1);
    expect(timed(hole(-1, 1))).toEqual([]);
    expect(timed([fixes.filter(({ time }) => Math.abs(time - 75) > 6)])).toEqual([]);
  });

  it('pass a gate between its ends only', () => {
    expect(timed([ride((time) => 8 * time, -10, 90, 1, 19)])).toHaveLength(1);
    expect(timed([ride((time) => 8 * time, -10, 90, 1, 21)])).toEqual([]);
  });

  it('are not longer than a run may be', () => {
    expect(timed([ride((time) => 0.08 * time, -100, 8_000, 5)])).toEqual([]);
  });

  it('refuse gates and positions that cannot be', () => {
    const fixes = ride((time) => 8 * time, -10, 90, 1);
    const both = { segments: [fixes], positionSd: 3, longest: LONGEST };
    const point: Gate = { from: place(0), to: place(0) };
    expect(() => runsBetween({ ...both, start: point, finish })).toThrow('start gate');
    expect(() => runsBetween({ ...both, start, finish: { from: place(0), to: place(900) } })).toThrow(
      'finish gate',
    );
    for (const positionSd of [0, Number.NaN, -1, 90]) {
      expect(() => timed([fixes], positionSd)).toThrow('positionSd');
    }
  });
});

describe('the stated uncertainty', () => {
  const uniform = uniformNumbers(20_261_128);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  /** Noise along and beside the track that forgets itself over `memory` seconds: a Gauss–Markov process. */
  function noisy(fixes: readonly Fix[], way: (time: number) => number, sd: number, memory: number): Fix[] {
    let [along, beside] = [sd * normal(), sd * normal()];
    let before = fixes[0]?.time ?? 0;
    return fixes.map(({ time }) => {
      const kept = memory === 0 ? 0 : Math.exp(-(time - before) / memory);
      before = time;
      along = kept * along + sd * Math.sqrt(1 - kept ** 2) * normal();
      beside = kept * beside + sd * Math.sqrt(1 - kept ** 2) * normal();
      return { ...place(way(time) + along, beside), time };
    });
  }
  const share = (memory: number, sd: number, speed: number, every: number) => {
    let inside = 0;
    const RECORDINGS = 2_000;
    for (let i = 0; i < RECORDINGS; i += 1) {
      const way = (time: number) => speed * time;
      const fixes = ride(way, -20 - uniform() * every, 600 / speed + 20, every);
      const [run] = timed([noisy(fixes, way, sd, memory)], sd);
      if (run !== undefined && Math.abs(run.time - 600 / speed) <= 1.96 * run.timeSd) inside += 1;
    }
    return inside / RECORDINGS;
  };

  // 95 % of 2,000 scatters by 0.5 %; the stated sd also holds the sampling, which a constant speed does not need.
  it.each([
    [1, 3, 8],
    [1, 2, 12],
    [0.2, 3, 8],
  ])('covers errors that change over half a minute: every %d s, %d m, %d m/s', (every, sd, speed) => {
    const covered = share(30, sd, speed, every);
    expect(covered).toBeGreaterThan(0.93);
    expect(covered).toBeLessThan(0.98);
  });

  it('is never too small for errors that are new with every fix', () => {
    const covered = share(0, 2, 12, 1);
    expect(covered).toBeGreaterThan(0.94);
  });

  it('grows with the way between two fixes where the speed changes, and covers it', () => {
    const sds = [1, 2, 4].map((every) => {
      const way = (time: number) => 3 * time + time ** 2 / 10;
      const end = (-3 + Math.sqrt(9 + 4 * 60)) * 5;
      const errors = Array.from({ length: 40 }, (_, i) => {
        const [run] = timed([ride(way, -5 - (i * every) / 40, end + 10, every)], 0.01);
        expect(Math.abs((run?.time ?? 0) - end)).toBeLessThan(1.96 * (run?.timeSd ?? 0) + 1e-3);
        return run?.timeSd ?? 0;
      });
      return Math.max(...errors);
    });
    expect(sds[1]).toBeGreaterThan(sds[0] ?? 0);
    expect(sds[2]).toBeGreaterThan(sds[1] ?? 0);
  });
});
