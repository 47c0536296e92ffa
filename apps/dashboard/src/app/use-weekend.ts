import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { groundOf } from '../features/baselines/model/ground.js';
import { plansQuery } from '../features/test-plans/api/plans.js';
import { leftOut, nextSaturday, placeOf, venueOf } from '../features/weekend/model/weekend.js';
import { joined } from '../shared/http/joined.js';
import { baselinesQuery } from '../shared/http/reads/baselines.js';
import { useFleet } from '../shared/http/reads/fleet.js';
import { tracksQuery } from '../shared/http/reads/tracks.js';

/** What both pages of a weekend are made of, from the address: the place, who rides there, and the baselines. */
export function useWeekend(teamId: string, search: Record<string, unknown>) {
  const place = placeOf(search);
  const tracks = useQuery(tracksQuery(teamId));
  const fleet = useFleet(teamId);
  const track = tracks.data?.find(({ id }) => id === place.trackId) ?? tracks.data?.[0];
  const ground = groundOf(place.ground);
  const baselines = useQuery({
    ...baselinesQuery(teamId, venueOf(track?.id ?? '', ground, place.temperatureC)),
    enabled: track !== undefined,
  });
  const plans = useInfiniteQuery({
    ...plansQuery(teamId, { state: 'open', trackId: track?.id ?? '' }),
    enabled: track !== undefined,
  });
  const atHome = leftOut(place);
  const { data: all } = baselines;
  return {
    place,
    ground,
    day: place.day ?? nextSaturday(new Date()),
    read: joined([tracks, fleet], () => ({ tracks: tracks.data ?? [], track, fleet: fleet.data })),
    baselines: { ...baselines, data: all?.filter(({ bikeId }) => !atHome.includes(bikeId)) },
    plans: plans.data ?? [],
    planName: (id: string) => plans.data?.find((plan) => plan.id === id)?.name ?? '',
  };
}
