import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { UnitForm } from '../../features/spring-units/components/unit-form.js';
import { texts } from '../../features/spring-units/texts.js';
import { texts as serviceTexts } from '../../features/unit-service/texts.js';
import { texts as measureTexts } from '../../features/workshop/measure-texts.js';
import { springUnitsQuery } from '../../shared/http/reads/spring-units.js';
import { LinkButton } from '../../shared/ui/link.js';
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
          <Page
            title={unit?.name ?? texts.newTitle}
            actions={
              unit !== undefined && (
                <>
                  <LinkButton
                    variant="default"
                    to="/teams/$teamId/spring-units/$unitId/service"
                    params={{ teamId, unitId }}
                  >
                    {serviceTexts.link}
                  </LinkButton>
                  <LinkButton
                    variant="default"
                    to="/teams/$teamId/spring-units/$unitId/measure"
                    params={{ teamId, unitId }}
                  >
                    {measureTexts.link}
                  </LinkButton>
                </>
              )
            }
          >
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
