import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { UnitForm } from '../../features/spring-units/components/unit-form.js';
import { texts } from '../../features/spring-units/texts.js';
import { springUnitsQuery } from '../../shared/http/reads/spring-units.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';

const route = getRouteApi('/teams/$teamId/team/spring-units/$unitId');

export function TeamUnitPage() {
  const { teamId, unitId } = route.useParams();
  const navigate = useNavigate();
  const query = useQuery(springUnitsQuery(teamId));
  return (
    <QueryView query={query}>
      {(units) => {
        const unit = units.find(({ id }) => id === unitId);
        return (
          <Page title={unit?.name ?? texts.newTitle}>
            <UnitForm
              teamId={teamId}
              unit={unit}
              onSaved={() => void navigate({ to: '/teams/$teamId/team/spring-units', params: { teamId } })}
            />
          </Page>
        );
      }}
    </QueryView>
  );
}
