import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { LogRunForm, type LogRunFormProps } from '../../features/ride/components/log-run-form.js';
import { emptyRun, valuesOf, type Ride, type RunValues } from '../../features/ride/model/run-form.js';
import { runTimer } from '../../features/ride/model/run-timer.js';
import { typedTemperature } from '../../features/ride/model/typed-temperature.js';
import { useQueueState } from '../../features/ride/queue/use-run-queue.js';
import { myBikeTexts } from '../../features/ride/my-bike-texts.js';
import { texts } from '../../features/ride/texts.js';
import { bikeEndsQuery } from '../../features/workbench/api/bike-ends.js';
import { localDay } from '../../shared/format/time.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery, type Bike } from '../../shared/http/reads/bikes.js';
import { recentRunsQuery } from '../../shared/http/reads/runs.js';
import { currentSetupsQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page } from '../../shared/ui/page.js';
import { Loading, QueryView } from '../../shared/ui/query-view.js';
import { chooseBike } from '../choose-bike.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/my-bike/log-run');

export function LogRunPage() {
  const { teamId, riderId } = useMembership().membership;
  const { bikeId } = route.useSearch();
  const bikes = useQuery(bikesQuery(teamId));
  const bike = chooseBike(bikes.data ?? [], riderId, bikeId);
  return (
    <Page title={myBikeTexts.logRun} lead={bike?.name}>
      <QueryView query={bikes}>
        {() =>
          bike === undefined ? (
            <Empty title={myBikeTexts.noBike}>{myBikeTexts.noBikeLead}</Empty>
          ) : (
            <Log key={bike.id} teamId={teamId} bike={bike} />
          )
        }
      </QueryView>
    </Page>
  );
}

function Log({ teamId, bike }: { teamId: string; bike: Bike }) {
  const { account } = useMembership();
  const { trackId, correct } = route.useSearch();
  const navigate = useNavigate();
  const tracks = useQuery(tracksQuery(teamId));
  const runs = useQuery(recentRunsQuery(teamId, bike.id));
  const setups = useQuery(currentSetupsQuery(teamId, bike.id));
  const { ready } = useQueueState();
  const likelyTrack = trackId ?? runs.data?.[0]?.trackId ?? '';
  const ends = useQuery({ ...bikeEndsQuery(teamId, bike.id, likelyTrack), enabled: likelyTrack !== '' });
  if (correct !== undefined && !ready) return <Loading />;
  const everything = joined([tracks, runs, setups], () => ({
    tracks: tracks.data ?? [],
    condition: runs.data?.[0]?.condition ?? 'dry',
    setupId: setups.data?.[0]?.id,
  }));
  const back = {
    to: '/teams/$teamId/my-bike',
    params: { teamId },
    search: { bikeId: bike.id, ...(trackId !== undefined && { trackId }) },
  } as const;
  return (
    <QueryView
      query={everything}
      isEmpty={(data) => data.tracks.length === 0}
      empty={<Empty title={texts.noTracks}>{texts.noTracksLead}</Empty>}
    >
      {(data) => (
        <NewOrCorrected
          account={account.id}
          teamId={teamId}
          correct={correct}
          rideNow={() => rideNow(bike.id, data.setupId, likelyTrack)}
          bikeName={bike.name}
          hasShock={bike.shockUnitId !== null}
          strokesMm={{ fork: ends.data?.fork.unit.strokeMm, shock: ends.data?.shock?.unit.strokeMm }}
          tracks={data.tracks}
          empty={emptyRun(likelyTrack, data.condition)}
          onSaved={() => void navigate(back)}
        />
      )}
    </QueryView>
  );
}

interface NewOrCorrectedProps extends Omit<LogRunFormProps, 'ride' | 'plan' | 'initial' | 'corrects'> {
  /** The key of a refused run on this phone. */
  readonly correct: string | undefined;
  readonly rideNow: () => Ride;
  readonly empty: RunValues;
}

/** The form for a new run, or for the refused one as it was when the form was opened. */
function NewOrCorrected({ correct, rideNow, empty, ...form }: NewOrCorrectedProps) {
  const { runs } = useQueueState();
  const [refused] = useState(() => runs.find(({ key }) => key === correct));
  if (refused === undefined) {
    return <LogRunForm {...form} ride={rideNow} initial={empty} corrects={undefined} />;
  }
  const { message, plan, key } = refused;
  return <LogRunForm {...form} ride={() => message} plan={plan} initial={valuesOf(message)} corrects={key} />;
}

/** The run that is being logged: on the set-up that is in the bike as far as this phone knows, today. */
function rideNow(bikeId: string, setupId: string | undefined, trackId: string): Ride {
  const now = Date.now();
  const timer = runTimer.read(now);
  return {
    bikeId,
    ...(setupId !== undefined && { setupId }),
    day: localDay(new Date(timer?.startedAt ?? now)),
    ...(timer !== null && { startedAt: new Date(timer.startedAt).toISOString() }),
    airTemperatureC: typedTemperature.read(trackId, now),
  };
}
