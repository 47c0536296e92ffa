import { TextLink } from '../../../shared/ui/link.js';
import type { PlanSummary } from '../api/plans.js';
import { progressOf } from '../model/order.js';
import { texts } from '../texts.js';

interface BikePlansProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly plans: readonly PlanSummary[];
}

/** The open plans of a bike, each a link: plan 4 of 8 runs. */
export function BikePlans({ teamId, bikeId, plans }: BikePlansProps) {
  return plans.flatMap((plan) => {
    const own = plan.riders.filter((rider) => rider.bikeId === bikeId);
    if (own.length === 0) return [];
    const { ridden, all } = progressOf(own);
    return (
      <div key={plan.id}>
        <TextLink
          to="/teams/$teamId/test-plans/$planId"
          params={{ teamId, planId: plan.id }}
          search={{ riderId: own[0]?.riderId }}
          aria-label={`${plan.name}: ${texts.planIn(ridden, all)}`}
        >
          {texts.planIn(ridden, all)}
        </TextLink>
      </div>
    );
  });
}
