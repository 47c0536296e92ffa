import { Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { SetupForm } from '../../features/setups/components/setup-form.js';
import { texts } from '../../features/setups/texts.js';
import { joined } from '../../shared/http/joined.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { currentSetupsQuery, setupHistoryQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { TextLink } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/bikes/$bikeId/new-set-up');

export function NewSetupPage() {
  const { teamId, bikeId } = route.useParams();
  const navigate = useNavigate();
  const fleet = useFleet(teamId);
  const { setupId, testPlanId, trackId } = route.useSearch();
  const setups = useQuery(currentSetupsQuery(teamId, bikeId));
  const isRiddenBefore = setupId !== undefined;
  const history = useQuery({ ...setupHistoryQuery(teamId, bikeId), enabled: isRiddenBefore });
  const tracks = useQuery(tracksQuery(teamId));
  const everything = joined([fleet, setups, tracks, ...(isRiddenBefore ? [history] : [])], () => ({
    bike: fleet.data?.bikes.find(({ id }) => id === bikeId),
    units: fleet.data?.units ?? [],
    start: history.data?.find(({ id }) => id === setupId) ?? setups.data?.[0],
    tracks: tracks.data ?? [],
  }));
  return (
    <QueryView query={everything} page={texts.change}>
      {({ bike, units, start, tracks: all }) => {
        if (bike === undefined) return <NotFoundPage />;
        return (
          <Page title={texts.newTitle(bike.name)} lead={texts.newLead}>
            {testPlanId !== undefined && (
              <Text>
                {texts.fromPlan(start?.revision)}{' '}
                <TextLink
                  to="/teams/$teamId/test-plans/$planId/comparison"
                  params={{ teamId, planId: testPlanId }}
                >
                  {texts.toComparison}
                </TextLink>
              </Text>
            )}
            <SetupForm
              teamId={teamId}
              bikeId={bikeId}
              start={start}
              origin={{ testPlanId: testPlanId ?? null, trackId: trackId ?? '' }}
              fork={units.find(({ id }) => id === bike.forkUnitId)}
              shock={units.find(({ id }) => id === bike.shockUnitId)}
              tracks={all}
              onSaved={() =>
                void navigate({ to: '/teams/$teamId/bikes/$bikeId', params: { teamId, bikeId } })
              }
            />
          </Page>
        );
      }}
    </QueryView>
  );
}
