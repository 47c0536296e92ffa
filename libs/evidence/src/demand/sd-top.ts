import { SCALE_OF_PRIOR, type Place, type SdSurface } from './sd-surface.js';

/** First distance at which the density is measured to both sides, and the longest move, in u. */
const LONGEST_MEASURE = 0.8;
/** Looks along one axis from one place. */
const MOST_LOOKS = 5;
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
 * What has been found along one axis: the best place, the sd that the parabola says, and the way there in such sds.
 * A way without an sd to measure it by is long.
 */
interface Step {
  place: Place;
  sd: number;
  move: number;
}

/**
 * Climbs to the top along one axis after the other, by the parabola through three places (powell1964 for the search
 * along axes); the parabolas' widths are the sds. Rounds go on until none moves far.
 */
export function climb(surface: SdSurface): SurfaceTop {
  let place = surface.at(surface.free.map(() => SCALE_OF_PRIOR));
  const sds = surface.free.map(() => Number.POSITIVE_INFINITY);
  let farthest = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_ROUNDS && farthest > SETTLED_MOVE; round += 1) {
    farthest = 0;
    for (const axis of surface.free.keys()) {
      const step = stepTo(surface, place, axis, Math.min(LONGEST_MEASURE, sds[axis] as number));
      place = step.place;
      sds[axis] = step.sd;
      farthest = Math.max(farthest, step.move);
    }
  }
  return { place, sds };
}

/** The density is even in u: a place below 0 is the one as far above it. */
const moved = (u: readonly number[], axis: number, by: number): number[] =>
  u.map((value, i) => (i === axis ? Math.abs(value + by) : value));

/** Looks to both sides of a place, nearer and nearer until a parabola fits, and at that parabola's top. */
function stepTo(surface: SdSurface, from: Place, axis: number, longest: number): Step {
  const u = from.u[axis] as number;
  const look = (by: number): Place => surface.at(moved(from.u, axis, by), from.posterior.factors);
  let place = from;
  let measure = longest;
  for (let looks = 1; looks <= MOST_LOOKS; looks += 1) {
    const above = look(measure);
    const below = look(-measure);
    for (const side of [above, below]) if (side.logDensity > place.logDensity) place = side;
    const bend = 2 * from.logDensity - above.logDensity - below.logDensity;
    if (!(bend > 0 && Number.isFinite(bend))) {
      // Both sides of a place near 0 are the same side: only nearer by is there a bend to see.
      if (measure < u) break;
      measure /= 2;
      continue;
    }
    const sd = measure / Math.sqrt(bend);
    const wanted = (measure * (above.logDensity - below.logDensity)) / (2 * bend);
    const by = Math.sign(wanted) * Math.min(Math.abs(wanted), LONGEST_MEASURE);
    if (Math.abs(by) > CLOSE * sd) {
      const trial = look(by);
      if (trial.logDensity > place.logDensity) place = trial;
    }
    return { place, sd, move: Math.abs((place.u[axis] as number) - u) / sd };
  }
  return {
    place,
    sd: Number.POSITIVE_INFINITY,
    move: place === from ? 0 : Number.POSITIVE_INFINITY,
  };
}
