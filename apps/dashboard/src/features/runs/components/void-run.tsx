import { VoidForm } from '../../../shared/ui/form/void-form.js';
import { useVoidRun } from '../api/void-run.js';
import { texts } from '../texts.js';

interface VoidRunProps {
  readonly teamId: string;
  readonly runId: string;
}

/** Takes a run out of the times; it stays in the list, struck out. */
export function VoidRun({ teamId, runId }: VoidRunProps) {
  const voiding = useVoidRun(teamId, runId);
  return (
    <VoidForm
      label={texts.voidTitle}
      error={voiding.error}
      isPending={voiding.isPending}
      onVoid={(answer) => voiding.mutate(answer)}
    />
  );
}
