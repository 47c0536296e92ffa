import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { LogRunForm } from '../../features/ride/components/log-run-form.js';
import { texts } from '../../features/ride/texts.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery } from '../../shared/http/reads/bikes.js';
import { runsQuery } from '../../shared/http/reads/runs.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { chooseBike } from '../choose-bike.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/my-bike/log-run');

export function LogRunPage() {
  const { teamId, riderId } = useMembership().membership;
  const { bikeId, trackId } = route.useSearch();
  const navigate = useNavigate();
  const bikes = useQuery(bikesQuery(teamId));
  const tracks = useQuery(tracksQuery(teamId));
  const bike = chooseBike(bikes.data ?? [], riderId, bikeId);
  const runs = useInfiniteQuery({
    ...runsQuery(teamId, { bikeId: bike?.id ?? '' }),
    enabled: bike !== undefined,
  });
  const everything = joined([bikes, tracks, ...(bike === undefined ? [] : [runs])], () => ({
    tracks: tracks.data ?? [],
    last: runs.data?.[0],
  }));
  return (
    <Page title={texts.logRun} lead={bike?.name}>
      <QueryView
        query={everything}
        isEmpty={(data) => data.tracks.length === 0}
        empty={<Empty title={texts.noTracks}>{texts.noTracksLead}</Empty>}
      >
        {(data) =>
          bike === undefined ? (
            <Empty title={texts.noBike}>{texts.noBikeLead}</Empty>
          ) : (
            <LogRunForm
              teamId={teamId}
              bikeId={bike.id}
              hasShock={bike.shockUnitId !== null}
              tracks={data.tracks}
              likely={{
                trackId: trackId ?? data.last?.trackId ?? '',
                condition: data.last?.condition ?? 'dry',
              }}
              onSaved={() =>
                void navigate({
                  to: '/teams/$teamId/my-bike',
                  params: { teamId },
                  search: { bikeId: bike.id, ...(trackId !== undefined && { trackId }) },
                })
              }
            />
          )
        }
      </QueryView>
    </Page>
  );
}
