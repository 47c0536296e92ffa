import { Link, Outlet } from '@tanstack/react-router';
import { texts } from '../texts.js';
import { useMembership } from '../use-membership.js';
import { AccountPanel } from './account-panel.js';
import { pagesOf } from './pages-of.js';
import { useFocusOnArrival } from './use-focus-on-arrival.js';
import classes from './shell.module.css';

/** The frame of every page of a team: its pages by role, who is signed in, and the content. */
export function TeamShell() {
  const { account, membership } = useMembership();
  const content = useFocusOnArrival();
  const params = { teamId: membership.teamId };
  return (
    <>
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
      <main id="content" ref={content} className={classes.main} tabIndex={-1}>
        <Outlet />
      </main>
    </>
  );
}
