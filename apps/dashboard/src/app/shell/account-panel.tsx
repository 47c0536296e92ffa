import { useLocation } from '@tanstack/react-router';
import { lazy, Suspense, useState } from 'react';
import type { Account, Membership } from '../../features/account/api/account.js';
import { Loading } from '../../shared/ui/query-view.js';
import { texts } from './texts.js';
import classes from './shell.module.css';

const AccountChoices = lazy(() =>
  import('./account-choices.js').then((module) => ({ default: module.AccountChoices })),
);

interface AccountPanelProps {
  readonly account: Account;
  readonly membership: Membership;
}

/** Opens what belongs to the account; its contents load when it is opened first. */
export function AccountPanel({ account, membership }: AccountPanelProps) {
  const [wasOpened, setWasOpened] = useState(false);
  const path = useLocation({ select: ({ pathname }) => pathname });
  return (
    // Closed again on the page that one of its links leads to, which it would cover.
    <details key={path} className={classes.account} onToggle={() => setWasOpened(true)}>
      <summary aria-label={`${account.displayName}: ${texts.account}`}>{account.displayName}</summary>
      <div className={classes.panel}>
        {wasOpened && (
          <Suspense fallback={<Loading />}>
            <AccountChoices account={account} membership={membership} />
          </Suspense>
        )}
      </div>
    </details>
  );
}
