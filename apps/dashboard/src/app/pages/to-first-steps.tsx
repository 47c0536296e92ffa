import { texts } from '../../features/first-steps/texts.js';
import { LinkButton } from '../../shared/ui/link.js';
import { useMembership } from '../use-membership.js';

/** The way on where a page needs what nobody has entered yet; a rider cannot enter it. */
export function ToFirstSteps() {
  const { teamId, role } = useMembership().membership;
  if (role === 'rider') return null;
  return (
    <LinkButton to="/teams/$teamId/first-steps" params={{ teamId }}>
      {texts.title}
    </LinkButton>
  );
}
