import { Stack, Text } from '@mantine/core';
import { useInfiniteQuery, useQuery, type UseInfiniteQueryResult } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { DecisionFilters } from '../../features/decisions/components/decision-filters.js';
import { DecisionList } from '../../features/decisions/components/decision-list.js';
import { ExportLinks } from '../../features/decisions/components/export-links.js';
import { texts } from '../../features/decisions/texts.js';
import { EnterOutcome } from '../../features/setups/components/enter-outcome.js';
import { joined } from '../../shared/http/joined.js';
import { decisionsQuery, type Decision, type DecisionFilter } from '../../shared/http/reads/decisions.js';
import { useFleet, type Fleet } from '../../shared/http/reads/fleet.js';
import { tracksQuery, type Track } from '../../shared/http/reads/tracks.js';
import { Below, isAsked } from '../../shared/ui/below.js';
import { More } from '../../shared/ui/more.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/decisions');

export function DecisionsPage() {
  const { teamId } = route.useParams();
  const { bikeId, riderId, trackId } = route.useSearch();
  // An address may carry more than is asked here.
  const filter = {
    ...(bikeId !== undefined && { bikeId }),
    ...(riderId !== undefined && { riderId }),
    ...(trackId !== undefined && { trackId }),
  };
  const navigate = useNavigate({ from: '/teams/$teamId/decisions' });
  const tracks = useQuery(tracksQuery(teamId));
  const fleet = useFleet(teamId);
  const records = joined([tracks, fleet], () => ({ tracks: tracks.data ?? [], fleet: fleet.data }));
  return (
    <Page title={texts.title} lead={texts.lead} actions={<ExportLinks teamId={teamId} filter={filter} />}>
      <QueryView query={records}>
        {({ tracks: all, fleet: team }) =>
          team !== undefined && (
            <>
              <DecisionFilters
                fleet={team}
                tracks={all}
                filter={filter}
                onChange={(search) => void navigate({ search, replace: true })}
              />
              <Decisions teamId={teamId} filter={filter} fleet={team} tracks={all} />
            </>
          )
        }
      </QueryView>
    </Page>
  );
}

interface PartProps {
  readonly teamId: string;
  readonly filter: DecisionFilter;
  readonly fleet: Fleet;
  readonly tracks: readonly Track[];
}

const nameIn = (tracks: readonly Track[]) => (id: string) =>
  tracks.find((track) => track.id === id)?.name ?? '';

/** What somebody still has to say something about, then the others. */
function Decisions({ teamId, filter, fleet, tracks }: PartProps) {
  const { role } = useMembership().membership;
  const open = useInfiniteQuery(decisionsQuery(teamId, { ...filter, outcome: 'open' }));
  // Asked for at once, though it is shown below.
  const all = useInfiniteQuery(decisionsQuery(teamId, filter));
  return (
    <>
      <Section title={texts.open}>
        <QueryView query={open} isEmpty={(items) => items.length === 0} empty={<Text>{texts.openNone}</Text>}>
          {(items) => (
            <>
              <DecisionList
                teamId={teamId}
                decisions={items}
                fleet={fleet}
                trackName={nameIn(tracks)}
                enterOutcome={(decision) => (
                  <Stack gap="sm" maw="44rem" className="ll-screen-only">
                    <EnterOutcome teamId={teamId} decision={decision} canTakeBack={role !== 'coach'} />
                  </Stack>
                )}
              />
              <More query={open} label={texts.more} screenOnly />
            </>
          )}
        </QueryView>
      </Section>
      <Below isReady={isAsked(open)}>
        <Settled teamId={teamId} decisions={all} fleet={fleet} tracks={tracks} />
      </Below>
    </>
  );
}

const isSettled = ({ outcome }: Decision) => outcome !== null;

interface SettledProps extends Omit<PartProps, 'filter'> {
  readonly decisions: UseInfiniteQueryResult<Decision[]>;
}

/** The timeline of all others, newest first. */
function Settled({ teamId, decisions, fleet, tracks }: SettledProps) {
  return (
    <Section title={texts.settled}>
      <QueryView
        query={decisions}
        isEmpty={(items) => !items.some(isSettled)}
        empty={<Text>{texts.settledNone}</Text>}
      >
        {(items) => (
          <>
            <DecisionList
              teamId={teamId}
              decisions={items.filter(isSettled)}
              fleet={fleet}
              trackName={nameIn(tracks)}
            />
            <More query={decisions} label={texts.more} screenOnly />
          </>
        )}
      </QueryView>
    </Section>
  );
}
