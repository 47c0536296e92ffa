import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { BikeForm } from '../../features/bikes/components/bike-form.js';
import { texts } from '../../features/bikes/texts.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { ToFirstSteps } from './to-first-steps.js';

const route = getRouteApi('/teams/$teamId/team/bikes/$bikeId');

export function TeamBikePage() {
  const { teamId, bikeId } = route.useParams();
  const navigate = useNavigate();
  const fleet = useFleet(teamId);
  return (
    <QueryView
      query={fleet}
      isEmpty={({ riders, units }) => riders.length === 0 || units.length === 0}
      empty={
        <Empty isPage title={texts.newTitle} action={<ToFirstSteps />}>
          {texts.needsFirst}
        </Empty>
      }
    >
      {({ bikes, riders, units }) => {
        const bike = bikes.find(({ id }) => id === bikeId);
        return (
          <Page title={bike?.name ?? texts.newTitle}>
            <BikeForm
              teamId={teamId}
              bike={bike}
              riders={riders}
              units={units}
              onSaved={() => void navigate({ to: '/teams/$teamId/team/bikes', params: { teamId } })}
            />
          </Page>
        );
      }}
    </QueryView>
  );
}
