import { useInfiniteQuery, useQuery, type UseInfiniteQueryResult } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { BikeBaseline } from '../../features/baselines/components/bike-baseline.js';
import { TakeBaseline } from '../../features/baselines/components/take-baseline.js';
import { GroundChooser } from '../../features/baselines/components/ground-chooser.js';
import { groundOf } from '../../features/baselines/model/ground.js';
import { texts as baselineTexts } from '../../features/baselines/texts.js';
import { texts as decisionTexts } from '../../features/decisions/texts.js';
import { demandQuery, FIRST_END } from '../../features/demand/api/demand.js';
import { TrackDemand } from '../../features/demand/components/track-demand.js';
import { texts as demandTexts } from '../../features/demand/texts.js';
import { RunTable } from '../../features/runs/components/run-table.js';
import { texts as runTexts } from '../../features/runs/texts.js';
import { texts as planTexts } from '../../features/test-plans/texts.js';
import { formatNumber } from '../../shared/format/numbers.js';
import { joined } from '../../shared/http/joined.js';
import { baselinesQuery, type Ground } from '../../shared/http/reads/baselines.js';
import { useFleet, type Fleet } from '../../shared/http/reads/fleet.js';
import { runsQuery, type Run } from '../../shared/http/reads/runs.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Below, isAsked } from '../../shared/ui/below.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { More } from '../../shared/ui/more.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { texts } from '../texts.js';
import { useMembership } from '../use-membership.js';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/tracks/$trackId');

export function TrackPage() {
  const { teamId, trackId } = route.useParams();
  const ground = groundOf(route.useSearch().ground);
  const { role } = useMembership().membership;
  const tracks = useQuery(tracksQuery(teamId));
  const fleet = useFleet(teamId);
  const place = joined([tracks, fleet], () => ({
    track: tracks.data?.find(({ id }) => id === trackId),
    fleet: fleet.data,
  }));
  return (
    <QueryView query={place}>
      {({ track, fleet: team }) => {
        if (track === undefined || team === undefined) return <NotFoundPage />;
        const facts = [texts.altitude(formatNumber(track.altitudeM)), track.sections.join(' → '), track.note];
        return (
          <Page
            title={track.name}
            lead={facts.filter((fact) => fact !== '').join(' · ')}
            actions={
              <>
                <LinkButton
                  variant="default"
                  to="/teams/$teamId/decisions"
                  params={{ teamId }}
                  search={{ trackId }}
                >
                  {decisionTexts.link}
                </LinkButton>
                {role !== 'rider' && (
                  <>
                    <LinkButton to="/teams/$teamId/test-plans/new" params={{ teamId }} search={{ trackId }}>
                      {planTexts.plan}
                    </LinkButton>
                    <LinkButton
                      variant="default"
                      to="/teams/$teamId/test-plans"
                      params={{ teamId }}
                      search={{ trackId }}
                    >
                      {planTexts.title}
                    </LinkButton>
                    <LinkButton variant="default" to="/teams/$teamId/import-runs" params={{ teamId }}>
                      {texts.importRuns}
                    </LinkButton>
                    <LinkButton
                      variant="default"
                      to="/teams/$teamId/tracks/$trackId/change"
                      params={{ teamId, trackId }}
                    >
                      {texts.changeTrack}
                    </LinkButton>
                  </>
                )}
              </>
            }
          >
            <Parts teamId={teamId} trackId={trackId} fleet={team} ground={ground} />
          </Page>
        );
      }}
    </QueryView>
  );
}

interface PartProps {
  readonly teamId: string;
  readonly trackId: string;
  readonly fleet: Fleet;
}

const bikeNameIn = (fleet: Fleet) => (id: string) => fleet.bikes.find((bike) => bike.id === id)?.name ?? '';

/** Demand against capacity: the track's picture, then every rider and bike under one another; then what was ridden. */
function Parts({ teamId, trackId, fleet, ground }: PartProps & { readonly ground: Ground }) {
  const navigate = route.useNavigate();
  const { role } = useMembership().membership;
  const demand = useQuery(demandQuery(teamId, trackId, { end: FIRST_END, condition: ground }));
  const baselines = useQuery(baselinesQuery(teamId, { trackId, condition: ground }));
  // Asked for at once, though they are shown below.
  const runs = useInfiniteQuery(runsQuery(teamId, { trackId }));
  const bikeName = bikeNameIn(fleet);
  return (
    <>
      <Section title={demandTexts.title}>
        <GroundChooser
          ground={ground}
          onChange={(chosen) => void navigate({ search: { ground: chosen }, replace: true })}
        />
        <TrackDemand
          teamId={teamId}
          trackId={trackId}
          fleet={fleet}
          condition={ground}
          baselines={baselines.data ?? []}
        />
      </Section>
      <Below isReady={isAsked(demand)}>
        <Section title={baselineTexts.title}>
          <QueryView
            query={baselines}
            isEmpty={(items) => items.length === 0}
            empty={<Empty title={baselineTexts.none}>{baselineTexts.noneLead}</Empty>}
          >
            {(items) =>
              items.map((baseline) => (
                <BikeBaseline
                  key={baseline.bikeId}
                  teamId={teamId}
                  baseline={baseline}
                  riderName={fleet.riderName(baseline.riderId)}
                  bikeName={bikeName(baseline.bikeId)}
                  canChange={role === 'mechanic'}
                  action={role !== 'rider' && <TakeBaseline teamId={teamId} baseline={baseline} />}
                />
              ))
            }
          </QueryView>
        </Section>
        <Below isReady={isAsked(baselines)}>
          <Section title={runTexts.title}>
            <Runs teamId={teamId} runs={runs} fleet={fleet} />
          </Section>
        </Below>
      </Below>
    </>
  );
}

interface RunsProps extends Omit<PartProps, 'trackId'> {
  readonly runs: UseInfiniteQueryResult<Run[]>;
}

function Runs({ teamId, runs, fleet }: RunsProps) {
  const { role } = useMembership().membership;
  const bikeName = bikeNameIn(fleet);
  return (
    <QueryView query={runs} isEmpty={(items) => items.length === 0} empty={<p>{runTexts.none}</p>}>
      {(items) => (
        <>
          <RunTable
            teamId={teamId}
            runs={items}
            whoOf={({ riderId, bikeId }) => `${fleet.riderName(riderId)}, ${bikeName(bikeId)}`}
            canVoid={role !== 'rider'}
          />
          <More query={runs} label={runTexts.more} />
        </>
      )}
    </QueryView>
  );
}
