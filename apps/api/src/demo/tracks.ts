import type { TrackInputDto } from '../modules/tracks/tracks.dto.js';

interface DemoTrack {
  readonly input: TrackInputDto;
  /** What the tool is not told. */
  readonly truth: {
    /** Median over riders of the biggest hit of a run at each end, m of drop to flat. */
    readonly medianHit: { readonly fork: number; readonly shock: number };
    /** Standard deviation of its log from run to run. */
    readonly logRunSd: number;
    /** Time of a practised run, s. */
    readonly time: number;
  };
}

const NOTE = 'Invented for the demo; no such track exists.';

/** The invented tracks, from smooth to rough. */
export const TRACKS = {
  oatbarrel: {
    input: {
      name: 'Oatbarrel Traverse',
      altitudeM: 95,
      sections: ['Orchard wall', 'Sawdust bends', 'Mill race'],
      note: `Smooth and flat, one kerb near the end. ${NOTE}`,
    },
    truth: { medianHit: { fork: 0.26, shock: 0.125 }, logRunSd: 0.22, time: 214 },
  },
  lanternmoth: {
    input: {
      name: 'Lanternmoth Gully',
      altitudeM: 420,
      sections: ['Upper gully', 'Root shelf', 'Lamp corner', 'Run-out'],
      note: `Roots in the middle, wet for days after rain. ${NOTE}`,
    },
    truth: { medianHit: { fork: 0.35, shock: 0.17 }, logRunSd: 0.21, time: 188 },
  },
  kettlespoon: {
    input: {
      name: 'Kettlespoon Ridge',
      altitudeM: 1_180,
      sections: ['Ridge line', 'Spoon bends', 'Slab'],
      note: `Fast ridge with one flat landing off the slab. ${NOTE}`,
    },
    truth: { medianHit: { fork: 0.44, shock: 0.21 }, logRunSd: 0.2, time: 167 },
  },
  thimblewick: {
    input: {
      name: 'Thimblewick Stairs',
      altitudeM: 760,
      sections: ['Quarry lip', 'Upper stairs', 'Lower stairs', 'Wick corner'],
      note: `Stone steps; the last one lands flat. ${NOTE}`,
    },
    truth: { medianHit: { fork: 0.54, shock: 0.26 }, logRunSd: 0.23, time: 142 },
  },
  copperfinch: {
    input: {
      name: 'Copperfinch Chute',
      altitudeM: 1_740,
      sections: ['Scree', 'Upper chute', 'Nest drops', 'Boulder field', 'Finish straight'],
      note: `The roughest of the season: three drops and a boulder field. ${NOTE}`,
    },
    truth: { medianHit: { fork: 0.68, shock: 0.33 }, logRunSd: 0.22, time: 231 },
  },
} as const satisfies Record<string, DemoTrack>;

export type TrackKey = keyof typeof TRACKS;
