import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { planComparisonQuery } from '../../features/comparisons/api/comparison.js';
import { ComparisonView } from '../../features/comparisons/components/comparison-view.js';
import { texts } from '../../features/comparisons/texts.js';
import { planQuery } from '../../features/test-plans/api/plans.js';
import { joined } from '../../shared/http/joined.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';

const route = getRouteApi('/teams/$teamId/test-plans/$planId/comparison');
/** In a plan every arm has a letter. */
const NO_NAME = { label: '', short: '' };

export function PlanComparisonPage() {
  const { teamId, planId } = route.useParams();
  const plan = useQuery(planQuery(teamId, planId));
  const comparison = useQuery(planComparisonQuery(teamId, planId));
  const riders = useQuery(ridersQuery(teamId));
  const everything = joined([comparison, riders], () => ({
    comparison: comparison.data,
    riders: riders.data ?? [],
  }));
  return (
    <Page
      title={texts.title}
      lead={plan.data?.name}
      actions={
        <LinkButton variant="default" to="/teams/$teamId/test-plans/$planId" params={{ teamId, planId }}>
          {texts.toPlan}
        </LinkButton>
      }
    >
      <QueryView query={everything}>
        {(data) =>
          data.comparison !== undefined && (
            <ComparisonView
              comparison={data.comparison}
              riderName={(id) => data.riders.find((rider) => rider.id === id)?.name ?? ''}
              setupName={() => NO_NAME}
            />
          )
        }
      </QueryView>
    </Page>
  );
}
