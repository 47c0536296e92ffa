import { AskWhy } from '../../../shared/ui/form/ask-why.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { useRestoreSetup } from '../api/restore-setup.js';
import { texts } from '../texts.js';

interface GoBackProps {
  readonly teamId: string;
  readonly setup: Setup;
}

/** Puts an earlier set-up back: a new revision equal to it, with its reason. */
export function GoBack({ teamId, setup }: GoBackProps) {
  const restore = useRestoreSetup(teamId);
  return (
    <div className="ll-screen-only">
      <AskWhy
        label={texts.goBack}
        fullLabel={texts.goBackTo(setup.revision)}
        lead={texts.goBackLead}
        why={texts.goBackWhy}
        field="reason"
        error={restore.error}
        isPending={restore.isPending}
        onSure={(reason, done) => restore.mutate({ setupId: setup.id, reason }, { onSuccess: done })}
      />
    </div>
  );
}
