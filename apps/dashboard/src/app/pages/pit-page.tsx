import { useInfiniteQuery } from '@tanstack/react-query';
import { texts as decisionTexts } from '../../features/decisions/texts.js';
import { PitList } from '../../features/pit/components/pit-list.js';
import { texts } from '../../features/pit/texts.js';
import { plansQuery } from '../../features/test-plans/api/plans.js';
import { BikePlans } from '../../features/test-plans/components/bike-plans.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function PitPage() {
  const { teamId, role } = useMembership().membership;
  const fleet = useFleet(teamId);
  const plans = useInfiniteQuery(plansQuery(teamId, { state: 'open' }));
  return (
    <Page
      title={texts.title}
      lead={texts.lead}
      actions={
        <LinkButton variant="default" to="/teams/$teamId/decisions" params={{ teamId }}>
          {decisionTexts.link}
        </LinkButton>
      }
    >
      <QueryView
        query={fleet}
        isEmpty={({ bikes }) => bikes.length === 0}
        empty={
          <Empty
            title={texts.none}
            action={
              <LinkButton to="/teams/$teamId/team" params={{ teamId }}>
                {texts.toTeam}
              </LinkButton>
            }
          >
            {texts.noneLead}
          </Empty>
        }
      >
        {(data) => (
          <PitList
            teamId={teamId}
            fleet={data}
            canSetUp={role === 'mechanic'}
            plansOf={(bikeId) => <BikePlans teamId={teamId} bikeId={bikeId} plans={plans.data ?? []} />}
          />
        )}
      </QueryView>
    </Page>
  );
}
