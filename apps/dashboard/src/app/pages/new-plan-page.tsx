import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { PlanForm } from '../../features/test-plans/components/plan-form.js';
import { emptyPlan } from '../../features/test-plans/model/plan-form.js';
import { texts } from '../../features/test-plans/texts.js';
import { localDay } from '../../shared/format/time.js';
import { joined } from '../../shared/http/joined.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { NotFoundPage } from './not-found-page.js';
import { ToFirstSteps } from './to-first-steps.js';

const route = getRouteApi('/teams/$teamId/test-plans/new');

export function NewPlanPage() {
  const { teamId, role } = useMembership().membership;
  const search = route.useSearch();
  const navigate = useNavigate();
  const fleet = useFleet(teamId);
  const tracks = useQuery(tracksQuery(teamId));
  const everything = joined([fleet, tracks], () => ({ fleet: fleet.data, tracks: tracks.data ?? [] }));
  if (role === 'rider') return <NotFoundPage />;
  return (
    <Page title={texts.newTitle} lead={texts.newLead}>
      <QueryView query={everything}>
        {({ fleet: team, tracks: all }) => {
          if (team === undefined) return null;
          if (team.bikes.length === 0 || all.length === 0) {
            return (
              <Empty title={texts.nothingToRide} action={<ToFirstSteps />}>
                {texts.nothingToRideLead}
              </Empty>
            );
          }
          const bike = team.bikes.find(({ id }) => id === search.bikeId);
          const track = all.find(({ id }) => id === search.trackId);
          const start = emptyPlan(track?.id ?? '', localDay(new Date()));
          return (
            <PlanForm
              teamId={teamId}
              fleet={team}
              tracks={all}
              start={bike === undefined ? start : { ...start, riders: { [bike.riderId]: bike.id } }}
              onMade={(planId) =>
                void navigate({ to: '/teams/$teamId/test-plans/$planId', params: { teamId, planId } })
              }
            />
          );
        }}
      </QueryView>
    </Page>
  );
}
