import { useRouter } from '@tanstack/react-router';
import { UnitsForm } from '../../features/account/components/units-form.js';
import { texts } from '../../features/account/unit-texts.js';
import { Page } from '../../shared/ui/page.js';
import { useMembership } from '../use-membership.js';

export function UnitsPage() {
  const router = useRouter();
  const { account } = useMembership();
  return (
    <Page title={texts.title} lead={texts.lead}>
      <UnitsForm units={account.units} onSaved={() => void router.invalidate()} />
    </Page>
  );
}
