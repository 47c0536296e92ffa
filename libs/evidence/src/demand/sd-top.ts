import { SCALE_OF_PRIOR, type Place, type SdSurface } from './sd-surface.js';

/** First distance at which the density is measured to both sides, and the longest move, in u. */
const LONGEST_MEASURE = 0.8;
/** A parabola's top nearer than this share of its sd is not worth a look: the lattice needs no exact top. */
const CLOSE = 0.3;
/** After a round with longer moves (in sds) the axes are measured once more. */
const SETTLED_MOVE = 1;
const MOST_ROUNDS = 12;

/** The top of a surface, nearly, and its posterior sd along each axis; Infinity where the density does not bend downwards. */
export interface SurfaceTop {
  place: Place;
  sds: readonly number[];
}

/**
 * Climbs to the top along one axis after the other, by the parabola through three places (powell1964 for the search
 * along axes); the parabolas' widths are the sds. Rounds go on until none moves far.
 */
export function climb(surface: SdSurface): SurfaceTop {
  let place = surface.at(surface.free.map(() => SCALE_OF_PRIOR));
  const sds = surface.free.map(() => Number.POSITIVE_INFINITY);
  const measures = surface.free.map(() => LONGEST_MEASURE);
  let farthest = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_ROUNDS && farthest > SETTLED_MOVE; round += 1) {
    farthest = 0;
    for (const axis of surface.free.keys()) {
      const step = stepTo(surface, place, axis, measures[axis] as number);
      const move = Math.abs((step.place.u[axis] as number) - (place.u[axis] as number));
      place = step.place;
      sds[axis] = step.sd;
      measures[axis] = Math.min(LONGEST_MEASURE, step.sd);
      farthest = Math.max(farthest, move / step.sd);
    }
  }
  return { place, sds };
}

const moved = (u: readonly number[], axis: number, by: number): number[] =>
  u.map((value, i) => (i === axis ? Math.abs(value + by) : value));

/** The best place found along one axis, and the sd that its parabola says. */
function stepTo(
  surface: SdSurface,
  from: Place,
  axis: number,
  measure: number,
): { place: Place; sd: number } {
  const above = surface.at(moved(from.u, axis, measure), from.posterior.factors);
  const below = surface.at(moved(from.u, axis, -measure), from.posterior.factors);
  const rise = (above.logDensity - below.logDensity) / 2;
  const bend = 2 * from.logDensity - above.logDensity - below.logDensity;
  let place = above.logDensity > below.logDensity ? above : below;
  if (from.logDensity >= place.logDensity) place = from;
  if (!(bend > 0)) return { place, sd: Number.POSITIVE_INFINITY };
  const sd = measure / Math.sqrt(bend);
  const wanted = (measure * rise) / bend;
  const by = Math.sign(wanted) * Math.min(Math.abs(wanted), LONGEST_MEASURE);
  if (Math.abs(by) > CLOSE * sd) {
    const trial = surface.at(moved(from.u, axis, by), from.posterior.factors);
    if (trial.logDensity > place.logDensity) place = trial;
  }
  return { place, sd };
}
