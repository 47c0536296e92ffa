import { NativeSelect } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { lazy, Suspense } from 'react';
import { MySetup } from '../../features/ride/components/my-setup.js';
import { texts } from '../../features/ride/texts.js';
import { RecentRuns } from '../../features/runs/components/recent-runs.js';
import { strokeMarks } from '../../shared/format/stroke-marks.js';
import { joined } from '../../shared/http/joined.js';
import { baselinesQuery, type EndBaseline } from '../../shared/http/reads/baselines.js';
import { bikesQuery, type Bike } from '../../shared/http/reads/bikes.js';
import { lastDecisionQuery } from '../../shared/http/reads/decisions.js';
import { runsQuery } from '../../shared/http/reads/runs.js';
import { currentSetupsQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { chooseBike } from '../choose-bike.js';
import { useMembership } from '../use-membership.js';
import classes from './my-bike-page.module.css';

const route = getRouteApi('/teams/$teamId/my-bike');
/** Few riders are in a plan: the first page does not wait for it. */
const RiderPlans = lazy(async () => {
  const { RiderPlans: component } = await import('../../features/test-plans/components/rider-plans.js');
  return { default: component };
});

export function MyBikePage() {
  const { teamId, riderId } = useMembership().membership;
  const { bikeId } = route.useSearch();
  const bikes = useQuery(bikesQuery(teamId));
  return (
    <QueryView query={bikes}>
      {(all) => {
        const bike = chooseBike(all, riderId, bikeId);
        if (bike === undefined) return <Empty title={texts.noBike}>{texts.noBikeLead}</Empty>;
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
  const search = { bikeId: bike.id, ...(trackId !== undefined && { trackId }) };
  return (
    <Page title={bike.name}>
      <Choosers bike={bike} own={own} tracks={tracks.data ?? []} trackId={trackId} />
      <Suspense fallback={null}>
        <RiderPlans teamId={teamId} riderId={bike.riderId} bikeId={bike.id} />
      </Suspense>
      <Now teamId={teamId} bikeId={bike.id} trackId={trackId} />
      <div className={`${classes.act} ll-screen-only`}>
        <LinkButton
          to="/teams/$teamId/my-bike/log-run"
          params={{ teamId }}
          search={search}
          size="lg"
          fullWidth
        >
          {texts.logRun}
        </LinkButton>
      </div>
      <Section title={texts.recent}>
        <QueryView query={runs} isEmpty={(items) => items.length === 0} empty={<p>{texts.noRuns}</p>}>
          {(items) => (
            <RecentRuns
              runs={items.slice(0, RECENT)}
              trackName={(id) => tracks.data?.find((track) => track.id === id)?.name ?? ''}
            />
          )}
        </QueryView>
      </Section>
    </Page>
  );
}

const RECENT = 8;

interface ChoosersProps {
  readonly bike: Bike;
  readonly own: readonly Bike[];
  readonly tracks: readonly { id: string; name: string }[];
  readonly trackId: string | undefined;
}

/** Which bike and which track: what the predictions below are for. */
function Choosers({ bike, own, tracks, trackId }: ChoosersProps) {
  const navigate = useNavigate({ from: '/teams/$teamId/my-bike' });
  const choose = (change: { bikeId?: string; trackId?: string }) =>
    void navigate({ search: (before) => ({ ...before, ...change }), replace: true });
  return (
    <div className={classes.choosers}>
      {own.length > 1 && (
        <NativeSelect
          label={texts.bike}
          value={bike.id}
          onChange={(event) => choose({ bikeId: event.currentTarget.value })}
          data={own.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      {tracks.length > 0 && trackId !== undefined && (
        <NativeSelect
          label={texts.track}
          value={trackId}
          onChange={(event) => choose({ trackId: event.currentTarget.value })}
          data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
    </div>
  );
}

interface NowProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly trackId: string | undefined;
}

/** The set-up now, what it uses of its stroke on the track, and why it was changed last. */
function Now({ teamId, bikeId, trackId }: NowProps) {
  const setups = useQuery(currentSetupsQuery(teamId, bikeId));
  const decisions = useQuery(lastDecisionQuery(teamId, bikeId));
  // The pictures come when they come; the figures do not wait for them.
  const baselines = useQuery({
    ...baselinesQuery(teamId, { trackId: trackId ?? '', bikeId }),
    enabled: trackId !== undefined,
  });
  const baseline = baselines.data?.find((item) => item.bikeId === bikeId);
  const marks = (end: EndBaseline | null | undefined) =>
    end?.current ? strokeMarks(end, end.current) : undefined;
  const state = joined([setups, decisions], () => ({
    setups: setups.data ?? [],
    decision: decisions.data?.[0],
  }));
  return (
    <QueryView query={state}>
      {({ setups: [now, before], decision }) =>
        now === undefined ? (
          <Empty title={texts.notSetUp}>{texts.notSetUpLead}</Empty>
        ) : (
          <MySetup
            now={now}
            before={before}
            decision={decision}
            strokes={{ fork: marks(baseline?.fork), shock: marks(baseline?.shock) }}
          />
        )
      }
    </QueryView>
  );
}
