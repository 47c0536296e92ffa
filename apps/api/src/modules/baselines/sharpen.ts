import { expectedHighHitInterval, highHitInterval, type DemandFit, type RunOf } from '@loamledger/evidence';

export const NEXT_RUN_KINDS = ['this rider here', 'another rider here', 'this rider elsewhere'] as const;
export type NextRunKind = (typeof NEXT_RUN_KINDS)[number];

/** 90 % interval of the 95th-percentile hit, m. */
export interface HighHit {
  readonly low: number;
  readonly high: number;
}

/** What two runs more would do for how well the 95th-percentile hit is known, the most telling first. */
export interface Sharpening {
  readonly now: HighHit;
  readonly options: readonly { readonly kind: NextRunKind; readonly then: HighHit }[];
}

/** Runs that fit into a practice beside everything else. Common practice, no source. */
export const NEXT_RUNS = 2;
/** Reading error of ln h of a usual reading: 2 mm and 1 psi in mid-stroke. Of the engine, rounded. */
const USUAL_READING_SD = 0.05;

/** What runs next would sharpen the forecast for this rider here. */
export function sharpening(
  fit: DemandFit,
  who: { readonly riderId: string; readonly trackId: string; readonly condition: string },
): Sharpening {
  const then = (run: RunOf): HighHit =>
    inMetres(expectedHighHitInterval(fit, who, { run, count: NEXT_RUNS, readingSd: USUAL_READING_SD }));
  // Whoever and whatever is known best tells most: their own part is known, so what is new is this track or rider.
  const other = mostRead(fit.riders, who.riderId);
  const elsewhere = mostRead(fit.tracks, who.trackId);
  const runs: [NextRunKind, RunOf][] = [
    ['this rider here', who],
    ...(other ? [['another rider here', { ...who, riderId: other }] as [NextRunKind, RunOf]] : []),
    ...(elsewhere ? [['this rider elsewhere', { ...who, trackId: elsewhere }] as [NextRunKind, RunOf]] : []),
  ];
  return {
    now: inMetres(highHitInterval(fit, who)),
    options: runs
      .map(([kind, run]) => ({ kind, then: then(run) }))
      .toSorted((a, b) => ratio(a.then) - ratio(b.then)),
  };
}

function mostRead(levels: readonly { id: string; readings: number }[], besides: string): string | undefined {
  return levels.filter(({ id }) => id !== besides).toSorted((a, b) => b.readings - a.readings)[0]?.id;
}

const inMetres = ({ low, high }: HighHit): HighHit => ({ low: Math.exp(low), high: Math.exp(high) });

const ratio = ({ low, high }: HighHit): number => high / low;
