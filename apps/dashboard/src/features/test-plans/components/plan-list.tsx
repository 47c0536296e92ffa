import { Text } from '@mantine/core';
import { formatDay } from '../../../shared/format/time.js';
import { TextLink } from '../../../shared/ui/link.js';
import type { PlanSummary } from '../api/plans.js';
import { progressOf } from '../model/order.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface PlanListProps {
  readonly teamId: string;
  readonly plans: readonly PlanSummary[];
  readonly trackName: (id: string) => string;
  readonly riderName: (id: string) => string;
}

/** Plans under one another: what, where, who, and how far. */
export function PlanList({ teamId, plans, trackName, riderName }: PlanListProps) {
  return (
    <ul className={classes.list}>
      {plans.map((plan) => {
        const { ridden, all } = progressOf(plan.riders);
        const facts = [
          trackName(plan.trackId),
          plan.day === null ? '' : formatDay(plan.day),
          plan.riders.map(({ riderId }) => riderName(riderId)).join(', '),
          plan.blind ? texts.blind : '',
        ];
        return (
          <li key={plan.id}>
            <div>
              <strong>
                <TextLink to="/teams/$teamId/test-plans/$planId" params={{ teamId, planId: plan.id }}>
                  {plan.name}
                </TextLink>
              </strong>
              <Text size="sm" c="dimmed">
                {facts.filter((fact) => fact !== '').join(' · ')}
              </Text>
            </div>
            <Text>
              {texts.runsOf(ridden, all)}
              {plan.closedAt !== null && ` · ${texts.closedOn(formatDay(plan.closedAt))}`}
            </Text>
          </li>
        );
      })}
    </ul>
  );
}
