import { useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { MeasureUnit } from '../../features/workshop/components/measure-unit.js';
import { PrintButton } from '../../features/workshop/components/print-button.js';
import { texts } from '../../features/workshop/measure-texts.js';
import { keys } from '../../shared/http/keys.js';
import { springUnitsQuery } from '../../shared/http/reads/spring-units.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/spring-units/$unitId/measure');

export function MeasureUnitPage() {
  const { teamId, unitId } = route.useParams();
  const { role } = useMembership().membership;
  const queries = useQueryClient();
  const query = useQuery(springUnitsQuery(teamId));
  return (
    <QueryView query={query}>
      {(units) => {
        const unit = units.find(({ id }) => id === unitId);
        if (unit === undefined)
          return (
            <Empty isPage title={texts.none}>
              {texts.noneLead}
            </Empty>
          );
        return (
          <Page
            title={texts.title(unit.name)}
            lead={texts.lead}
            actions={
              <>
                <PrintButton label={texts.print} />
                {role === 'mechanic' && (
                  <LinkButton
                    variant="default"
                    to="/teams/$teamId/team/spring-units/$unitId"
                    params={{ teamId, unitId }}
                  >
                    {texts.back}
                  </LinkButton>
                )}
              </>
            }
          >
            <MeasureUnit
              key={unit.id}
              teamId={teamId}
              unit={unit}
              canWrite={role === 'mechanic'}
              onLookAgain={() => queries.invalidateQueries({ queryKey: keys.springUnits(teamId) })}
            />
          </Page>
        );
      }}
    </QueryView>
  );
}
