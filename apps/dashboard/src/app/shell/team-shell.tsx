import { Link, Outlet, useMatches } from '@tanstack/react-router';
import { RunQueueProvider } from '../../features/ride/queue/use-run-queue.js';
import { LazyKit } from '../kit/lazy-kit.js';
import { texts } from './texts.js';
import { useMembership } from '../use-membership.js';
import { AccountPanel } from './account-panel.js';
import { NewVersionNote } from './new-version-note.js';
import { pagesOf } from './pages-of.js';
import { useFocusOnArrival } from './use-focus-on-arrival.js';
import classes from './shell.module.css';

/** The frame of every page of a team: its pages by role, who is signed in, and the content. */
export function TeamShell() {
  const { account, membership } = useMembership();
  const content = useFocusOnArrival();
  const withoutKit = useMatches({ select: (matches) => matches.at(-1)?.staticData.withoutKit === true });
  const params = { teamId: membership.teamId };
  return (
    <RunQueueProvider account={account.id} key={account.id}>
      <a href="#content" className={classes.skip}>
        {texts.skip}
      </a>
      <header className={classes.header}>
        <div className={classes.bar}>
          <Link to="/teams/$teamId" params={params} className={classes.brand}>
            {texts.product}
          </Link>
          <nav className={classes.pages} aria-label={texts.navigation}>
            {pagesOf(membership).map(({ to, text }) => (
              <Link key={to} to={to} params={params}>
                {text}
              </Link>
            ))}
          </nav>
          <AccountPanel account={account} membership={membership} />
        </div>
      </header>
      <NewVersionNote />
      <main id="content" ref={content} className={classes.main} tabIndex={-1}>
        {withoutKit ? (
          <Outlet />
        ) : (
          <LazyKit>
            <Outlet />
          </LazyKit>
        )}
      </main>
    </RunQueueProvider>
  );
}
