import { useInfiniteQuery, useQueries, useQuery } from '@tanstack/react-query';
import { setupHistoryQuery } from '../../../shared/http/reads/setups.js';
import { LinkButton } from '../../../shared/ui/link.js';
import { planQuery, plansQuery, progressQuery, type PlanSummary } from '../api/plans.js';
import { riderTexts as texts } from '../rider-texts.js';
import classes from './rider-plans.module.css';

interface RiderPlansProps {
  readonly teamId: string;
  readonly riderId: string;
  readonly bikeId: string;
}

/** What a rider rides next in the open plans on their bike; nothing where there is no plan. */
export function RiderPlans({ teamId, riderId, bikeId }: RiderPlansProps) {
  const plans = useInfiniteQuery(plansQuery(teamId, { state: 'open' }));
  const own = (plans.data ?? []).filter(({ riders }) =>
    riders.some((rider) => rider.riderId === riderId && rider.bikeId === bikeId),
  );
  // So that the plan's page opens without signal.
  useQueries({ queries: own.map(({ id }) => planQuery(teamId, id)) });
  useQuery({ ...setupHistoryQuery(teamId, bikeId), enabled: own.some(({ blind }) => !blind) });
  const places = useQueries({ queries: own.map(({ id }) => progressQuery(teamId, id)) });
  return own.map((plan, i) => {
    const place = places[i]?.data?.find((progress) => progress.riderId === riderId);
    return <OnePlan key={plan.id} teamId={teamId} plan={plan} letter={place?.next?.letter} />;
  });
}

interface OnePlanProps {
  readonly teamId: string;
  readonly plan: PlanSummary;
  readonly letter: string | undefined;
}

function OnePlan({ teamId, plan, letter }: OnePlanProps) {
  return (
    <section className={classes.plan} aria-label={texts.yourPlan}>
      {letter !== undefined && <span className={classes.letter}>{letter}</span>}
      <div>
        <strong>{letter === undefined ? texts.allRidden : texts.yourNext(letter)}</strong>
        <div>{plan.name}</div>
      </div>
      <LinkButton to="/teams/$teamId/test-plans/$planId" params={{ teamId, planId: plan.id }}>
        {texts.toPlan}
      </LinkButton>
    </section>
  );
}
