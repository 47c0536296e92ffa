import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { RiderForm } from '../../features/riders/components/rider-form.js';
import { texts } from '../../features/riders/texts.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';

const route = getRouteApi('/teams/$teamId/team/riders/$riderId');

export function TeamRiderPage() {
  const { teamId, riderId } = route.useParams();
  const navigate = useNavigate();
  const query = useQuery(ridersQuery(teamId));
  return (
    <QueryView query={query}>
      {(riders) => {
        const rider = riders.find(({ id }) => id === riderId);
        return (
          <Page title={rider?.name ?? texts.newTitle}>
            <RiderForm
              teamId={teamId}
              rider={rider}
              onSaved={() => void navigate({ to: '/teams/$teamId/team/riders', params: { teamId } })}
            />
          </Page>
        );
      }}
    </QueryView>
  );
}
