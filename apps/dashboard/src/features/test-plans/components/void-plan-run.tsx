import { VoidForm } from '../../../shared/ui/form/void-form.js';
import { useVoidPlanRun } from '../api/ride-plan.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface VoidPlanRunProps {
  readonly teamId: string;
  readonly planId: string;
  readonly runId: string;
  readonly position: number;
}

/** Takes a run of a plan out of the times; the rest is ordered anew. */
export function VoidPlanRun({ teamId, planId, runId, position }: VoidPlanRunProps) {
  const voiding = useVoidPlanRun(teamId, planId);
  return (
    <VoidForm
      label={texts.voidRun(position)}
      lead={texts.voidLead}
      className={classes.whole}
      error={voiding.error}
      isPending={voiding.isPending}
      onVoid={(answer) => voiding.mutate({ runId, ...answer })}
    />
  );
}
