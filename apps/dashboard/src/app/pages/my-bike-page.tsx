import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { RunUnderWay } from '../../features/ride/components/run-under-way.js';
import { useTypedTemperature } from '../../features/ride/components/use-typed-temperature.js';
import { runTimer } from '../../features/ride/model/run-timer.js';
import { airToday } from '../../features/ride/model/todays-air.js';
import { myBikeTexts } from '../../features/ride/my-bike-texts.js';
import { RecentRuns } from '../../features/runs/components/recent-runs.js';
import { bikesQuery, type Bike } from '../../shared/http/reads/bikes.js';
import { recentRunsQuery } from '../../shared/http/reads/runs.js';
import { currentSetupsQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Below, isAsked } from '../../shared/ui/below.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { chooseBike } from '../choose-bike.js';
import { useMembership } from '../use-membership.js';
import { WaitingRuns } from './waiting-runs.js';
import { MyBikeNow } from './my-bike-now.js';
import { NextRows, useNext } from './my-bike-next.js';
import { Place } from './my-bike-place.js';
import classes from './my-bike-page.module.css';

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
  const runs = useQuery(recentRunsQuery(teamId, bike.id));
  const tracks = useQuery(tracksQuery(teamId));
  const setups = useQuery(currentSetupsQuery(teamId, bike.id));
  const chosen = route.useSearch().trackId;
  // Not for another track before that of the last run is known.
  const usual = runs.isPending ? undefined : (runs.data?.[0]?.trackId ?? tracks.data?.[0]?.id);
  const trackId = chosen ?? usual;
  const temperature = useTypedTemperature();
  const temperatureC = temperature.of(trackId);
  const track = tracks.data?.find(({ id }) => id === trackId);
  const air = track && airToday(track.altitudeM, temperatureC);
  const trackName = (id: string) => tracks.data?.find((other) => other.id === id)?.name ?? '';
  const next = useNext(teamId, bike, trackName);
  const place = { bikeId: bike.id, ...(trackId !== undefined && { trackId }) };
  return (
    <Page title={bike.name}>
      <div>
        <Place
          bike={bike}
          own={own}
          tracks={tracks.data ?? []}
          trackId={trackId}
          temperatureC={temperatureC}
          onTemperature={(celsius) => temperature.type(trackId, celsius)}
          air={air}
        />
        {/* The room of the first is kept: the figures below neither wait for it nor move. */}
        <div className={classes.first}>
          <Below isReady={next.isAsked}>
            <NextRows teamId={teamId} rows={next.rows.slice(0, 1)} />
            {next.isKnown && next.rows.length > 0 ? null : (
              <p className={classes.age}>
                {next.isKnown ? myBikeTexts.nothingNext : myBikeTexts.nextUnknown}
              </p>
            )}
          </Below>
        </div>
      </div>
      <MyBikeNow
        teamId={teamId}
        bikeId={bike.id}
        trackId={trackId}
        air={air}
        lastRidden={runs.data?.[0]?.setupId ?? undefined}
        alsoShown={[runs, tracks, ...next.readings]}
      />
      <Below isReady={next.isAsked}>
        <NextRows teamId={teamId} rows={next.rows.slice(1)} />
      </Below>
      <div className={`${classes.act} ll-screen-only`}>
        <RunUnderWay />
        <Log teamId={teamId} place={place} />
      </div>
      <WaitingRuns teamId={teamId} from={`/teams/${teamId}/my-bike`} />
      <Below isReady={isAsked(setups)}>
        <Section title={myBikeTexts.recent}>
          <QueryView query={runs} isEmpty={(items) => items.length === 0} empty={<p>{myBikeTexts.noRuns}</p>}>
            {(items) => <RecentRuns runs={items} trackName={trackName} />}
          </QueryView>
        </Section>
      </Below>
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
