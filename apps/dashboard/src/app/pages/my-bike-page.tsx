import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { lazy, Suspense, useState } from 'react';
import { RunUnderWay } from '../../features/ride/components/run-under-way.js';
import { runTimer } from '../../features/ride/model/run-timer.js';
import { airToday } from '../../features/ride/model/todays-air.js';
import { typedTemperature } from '../../features/ride/model/typed-temperature.js';
import { myBikeTexts } from '../../features/ride/my-bike-texts.js';
import { RecentRuns } from '../../features/runs/components/recent-runs.js';
import { bikesQuery, type Bike } from '../../shared/http/reads/bikes.js';
import { runsQuery } from '../../shared/http/reads/runs.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { chooseBike } from '../choose-bike.js';
import { useMembership } from '../use-membership.js';
import { WaitingRuns } from './waiting-runs.js';
import { MyBikeNow } from './my-bike-now.js';
import { Place } from './my-bike-place.js';
import classes from './my-bike-page.module.css';

/** Few riders are in a plan: the first page does not wait for it. */
const RiderPlans = lazy(async () => {
  const { RiderPlans: component } = await import('../../features/test-plans/components/rider-plans.js');
  return { default: component };
});
const RECENT = 8;
const route = getRouteApi('/teams/$teamId/my-bike');

export function MyBikePage() {
  const { teamId, riderId } = useMembership().membership;
  const { bikeId } = route.useSearch();
  const bikes = useQuery(bikesQuery(teamId));
  return (
    <QueryView query={bikes}>
      {(all) => {
        const bike = chooseBike(all, riderId, bikeId);
        if (bike === undefined)
          return (
            <Empty isPage title={myBikeTexts.noBike}>
              {myBikeTexts.noBikeLead}
            </Empty>
          );
        const own = all.filter((other) => other.riderId === bike.riderId);
        return <OneBike key={bike.id} teamId={teamId} bike={bike} own={own} />;
      }}
    </QueryView>
  );
}

interface OneBikeProps {
  readonly teamId: string;
  readonly bike: Bike;
  /** All bikes of the same rider, to choose from. */
  readonly own: readonly Bike[];
}

function OneBike({ teamId, bike, own }: OneBikeProps) {
  const runs = useInfiniteQuery(runsQuery(teamId, { bikeId: bike.id }));
  const tracks = useQuery(tracksQuery(teamId));
  const chosen = route.useSearch().trackId;
  const trackId = chosen ?? runs.data?.[0]?.trackId ?? tracks.data?.[0]?.id;
  const [typed, setTyped] = useState<{ celsius: number | null }>();
  const temperatureC = typed === undefined ? typedTemperature.read(trackId, Date.now()) : typed.celsius;
  const track = tracks.data?.find(({ id }) => id === trackId);
  const air = track && airToday(track.altitudeM, temperatureC);
  const place = { bikeId: bike.id, ...(trackId !== undefined && { trackId }) };
  const type = (celsius: number | null) => {
    setTyped({ celsius });
    if (trackId !== undefined) typedTemperature.write(trackId, celsius, Date.now());
  };
  return (
    <Page title={bike.name}>
      <Place
        bike={bike}
        own={own}
        tracks={tracks.data ?? []}
        trackId={trackId}
        temperatureC={temperatureC}
        onTemperature={type}
        air={air}
      />
      <Suspense fallback={null}>
        <RiderPlans teamId={teamId} riderId={bike.riderId} bikeId={bike.id} />
      </Suspense>
      <MyBikeNow
        teamId={teamId}
        bikeId={bike.id}
        trackId={trackId}
        air={air}
        lastRidden={runs.data?.[0]?.setupId ?? undefined}
        alsoShown={[runs, tracks]}
      />
      <div className={`${classes.act} ll-screen-only`}>
        <RunUnderWay />
        <Log teamId={teamId} place={place} />
      </div>
      <WaitingRuns teamId={teamId} from={`/teams/${teamId}/my-bike`} />
      <Section title={myBikeTexts.recent}>
        <QueryView query={runs} isEmpty={(items) => items.length === 0} empty={<p>{myBikeTexts.noRuns}</p>}>
          {(items) => (
            <RecentRuns
              runs={items.slice(0, RECENT)}
              trackName={(id) => tracks.data?.find((other) => other.id === id)?.name ?? ''}
            />
          )}
        </QueryView>
      </Section>
    </Page>
  );
}

interface LogProps {
  readonly teamId: string;
  readonly place: { readonly bikeId: string; readonly trackId?: string };
}

/** The two ways to log: start the timer now, or enter what was ridden. */
function Log({ teamId, place }: LogProps) {
  const to = { to: '/teams/$teamId/my-bike/log-run', params: { teamId }, search: place } as const;
  const isUnderWay = runTimer.read(Date.now()) !== null;
  const start = () => runTimer.start(Date.now());
  if (isUnderWay) {
    return (
      <LinkButton {...to} size="lg" fullWidth>
        {myBikeTexts.toRun}
      </LinkButton>
    );
  }
  return (
    <div className={classes.ways}>
      <LinkButton {...to} size="lg" fullWidth variant="default" onClick={start}>
        {myBikeTexts.startRun}
      </LinkButton>
      <LinkButton {...to} size="lg" fullWidth>
        {myBikeTexts.logRun}
      </LinkButton>
    </div>
  );
}
