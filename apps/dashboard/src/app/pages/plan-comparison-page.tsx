import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { planComparisonQuery } from '../../features/comparisons/api/comparison.js';
import { ComparisonView } from '../../features/comparisons/components/comparison-view.js';
import { texts } from '../../features/comparisons/texts.js';
import { planQuery } from '../../features/test-plans/api/plans.js';
import { MakeSetUp } from '../../features/test-plans/components/make-set-up.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery } from '../../shared/http/reads/bikes.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/test-plans/$planId/comparison');
/** In a plan every arm has a letter. */
const NO_NAME = { label: '', short: '' };

export function PlanComparisonPage() {
  const { teamId, planId } = route.useParams();
  const plan = useQuery(planQuery(teamId, planId));
  const comparison = useQuery(planComparisonQuery(teamId, planId));
  const riders = useQuery(ridersQuery(teamId));
  const bikes = useQuery(bikesQuery(teamId));
  const { role } = useMembership().membership;
  const everything = joined([comparison, riders, plan, bikes], () => ({
    comparison: comparison.data,
    riders: riders.data ?? [],
    plan: plan.data,
    bikes: bikes.data ?? [],
  }));
  return (
    <Page
      title={texts.title}
      // Room for its line from the start: a refused comparison is told before the plan's name has come.
      lead={plan.data?.name ?? '\u00a0'}
      actions={
        <LinkButton variant="default" to="/teams/$teamId/test-plans/$planId" params={{ teamId, planId }}>
          {texts.toPlan}
        </LinkButton>
      }
    >
      <QueryView query={everything}>
        {(data) =>
          data.comparison !== undefined && (
            <>
              <ComparisonView
                comparison={data.comparison}
                riderName={(id) => data.riders.find((rider) => rider.id === id)?.name ?? ''}
                setupName={() => NO_NAME}
              />
              {data.plan !== undefined && role !== 'coach' && (
                <MakeSetUp teamId={teamId} plan={data.plan} bikes={data.bikes} />
              )}
            </>
          )
        }
      </QueryView>
    </Page>
  );
}
