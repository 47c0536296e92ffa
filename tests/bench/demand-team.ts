import type { DemandReading } from '@loamledger/evidence';

/** Standard deviations of the invented team's effects, log metres. */
const EFFECT_SDS = { track: 0.4, rider: 0.2, riderOnTrack: 0.06, run: 0.2 };
const MEAN_LOG_HEIGHT = -0.9;
/** Effect of the first track: so rough that its readings are bounds alone, which a fit takes longest over. */
const ROUGHEST = 1.2;
/** Log height at which the travel is used up, and how it differs from run to run. */
const LIMIT = { mean: -0.5, sd: 0.05 };
const READING_SD = { exact: 0.05, bound: 0.02 };

/** Normal draws that repeat exactly: x → 48271·x mod 2³¹ − 1, two of them a draw (Box and Muller's formula). */
function normalDraws(): () => number {
  let state = 20_261_128;
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Readings (log metres) of an invented team: every rider on every track in turn; what exceeds the limit is a lower bound. */
export function teamReadings(riders: number, tracks: number, count: number): DemandReading[] {
  const draw = normalDraws();
  const effects = (number: number, sd: number) => Array.from({ length: number }, () => sd * draw());
  const ofTrack = [ROUGHEST, ...effects(tracks - 1, EFFECT_SDS.track)];
  const ofRider = effects(riders, EFFECT_SDS.rider);
  const ofPair = effects(riders * tracks, EFFECT_SDS.riderOnTrack);
  return Array.from({ length: count }, (_, i) => {
    const pair = i % (riders * tracks);
    const [track, rider] = [Math.floor(pair / riders), pair % riders];
    const level = MEAN_LOG_HEIGHT + (ofTrack[track] ?? NaN) + (ofRider[rider] ?? NaN) + (ofPair[pair] ?? NaN);
    const height = level + EFFECT_SDS.run * draw();
    const limit = LIMIT.mean + LIMIT.sd * draw();
    const isBound = height > limit;
    return {
      riderId: `rider ${rider}`,
      trackId: `track ${track}`,
      kind: isBound ? 'at-least' : 'exact',
      logHeight: isBound ? limit : height,
      readingSd: isBound ? READING_SD.bound : READING_SD.exact,
    };
  });
}
