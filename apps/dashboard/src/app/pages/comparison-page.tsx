import { Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { chosenComparisonQuery } from '../../features/comparisons/api/comparison.js';
import { ChooseSetups } from '../../features/comparisons/components/choose-setups.js';
import { ComparisonView } from '../../features/comparisons/components/comparison-view.js';
import { texts } from '../../features/comparisons/texts.js';
import { joined } from '../../shared/http/joined.js';
import { useFleet, type Fleet } from '../../shared/http/reads/fleet.js';
import { setupHistoryQuery, type Setup } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Failure } from '../../shared/ui/error-view.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { ToFirstSteps } from './to-first-steps.js';

const route = getRouteApi('/teams/$teamId/comparison');

export function ComparisonPage() {
  const { teamId } = useMembership().membership;
  const search = route.useSearch();
  const navigate = useNavigate({ from: '/teams/$teamId/comparison' });
  const { bikeId = '', trackId = '', currentSetupId = '' } = search;
  const fleet = useFleet(teamId);
  const tracks = useQuery(tracksQuery(teamId));
  const setups = useQuery({ ...setupHistoryQuery(teamId, bikeId), enabled: bikeId !== '' });
  const lists = joined([fleet, tracks], () => ({ fleet: fleet.data, tracks: tracks.data ?? [] }));
  const isChosen = bikeId !== '' && trackId !== '' && currentSetupId !== '';
  return (
    <Page title={texts.chooseTitle} lead={texts.chooseLead}>
      <QueryView query={lists}>
        {({ fleet: team, tracks: all }) =>
          team !== undefined &&
          (team.bikes.length === 0 || all.length === 0 ? (
            <Empty title={texts.nothingRidden} action={<ToFirstSteps />}>
              {texts.nothingRiddenLead}
            </Empty>
          ) : (
            <>
              <ChooseSetups
                bikes={team.bikes}
                tracks={all}
                setups={setups.data ?? []}
                chosen={search}
                onChange={(chosen) => void navigate({ search: chosen, replace: true })}
              />
              <Failure error={setups.error} />
              {isChosen ? (
                <Chosen teamId={teamId} fleet={team} setups={setups.data ?? []} />
              ) : (
                <Text>{setups.data?.length === 0 ? texts.noSetups : texts.chooseFirst}</Text>
              )}
            </>
          ))
        }
      </QueryView>
    </Page>
  );
}

interface ChosenProps {
  readonly teamId: string;
  readonly fleet: Fleet;
  readonly setups: readonly Setup[];
}

function Chosen({ teamId, fleet, setups }: ChosenProps) {
  const { bikeId = '', trackId = '', currentSetupId = '', setupId } = route.useSearch();
  const chosen = { bikeId, trackId, currentSetupId, ...(setupId !== undefined && { setupId }) };
  const comparison = useQuery(chosenComparisonQuery(teamId, chosen));
  const setupName = (id: string) => {
    const revision = setups.find((candidate) => candidate.id === id)?.revision;
    return revision === undefined
      ? { label: texts.unknownSetup, short: '' }
      : { label: texts.setup(revision), short: String(revision) };
  };
  return (
    <QueryView query={comparison}>
      {(data) => <ComparisonView comparison={data} riderName={fleet.riderName} setupName={setupName} />}
    </QueryView>
  );
}
