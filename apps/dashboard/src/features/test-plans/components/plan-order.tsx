import { Text } from '@mantine/core';
import { formatRunTime } from '../../../shared/format/time.js';
import type { Plan } from '../api/plans.js';
import { orderOf, type OrderedRun } from '../model/order.js';
import { texts } from '../texts.js';
import { VoidPlanRun } from './void-plan-run.js';
import classes from './plans.module.css';

interface PlanOrderProps {
  readonly teamId: string;
  readonly plan: Plan;
  readonly riderId: string;
}

/** Every run of a rider in the plan: ridden, void, next, and still to come. */
export function PlanOrder({ teamId, plan, riderId }: PlanOrderProps) {
  const nameOf = (letter: string) => plan.arms.find((arm) => arm.letter === letter)?.name;
  return (
    <ol className={classes.order}>
      {orderOf(plan, riderId).map(({ run, state }) => (
        <li
          key={`${run.position} ${run.runId ?? ''}`}
          className={{ done: '', open: '', next: classes.isNext, void: classes.isVoid }[state]}
        >
          <div className={classes.row}>
            <span className={classes.place}>{run.position}</span>
            <span className={classes.armLetter}>{run.letter}</span>
            <span>
              {stateWords({ run, state })}
              {run.voidReason !== null && `: ${run.voidReason}`}
              <Text span size="sm" c="dimmed" display="block">
                {[nameOf(run.letter) ?? '', run.kind === 'warm-up' ? texts.kind[run.kind] : '']
                  .filter((word) => word !== '')
                  .join(' · ')}
              </Text>
            </span>
            {state === 'done' && plan.closedAt === null && run.runId !== null && (
              <VoidPlanRun teamId={teamId} planId={plan.id} runId={run.runId} position={run.position} />
            )}
          </div>
        </li>
      ))}
    </ol>
  );
}

function stateWords({ run, state }: OrderedRun): string {
  if (state !== 'done') return texts.state[state];
  return `${texts.state.done}, ${run.timeS === null ? texts.notTimed : formatRunTime(run.timeS)}`;
}
