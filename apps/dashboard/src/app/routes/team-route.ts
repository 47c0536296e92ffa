import { createRoute, notFound, redirect } from '@tanstack/react-router';
import { showFiguresIn } from '../../shared/format/sentences.js';
import { homeOf } from '../home.js';
import { TeamShell } from '../shell/team-shell.js';
import { requireAccount } from './require-account.js';
import { root } from './root.js';

/** Everything of a team; who is not in it finds nothing here. */
export const team = createRoute({
  getParentRoute: () => root,
  path: '/teams/$teamId',
  beforeLoad: async ({ params, location }) => {
    const account = await requireAccount(location.href);
    const membership = account.memberships.find(({ teamId }) => teamId === params.teamId);
    if (membership === undefined) throw notFound();
    await showFiguresIn(account.units);
    return { account, membership };
  },
  component: TeamShell,
});

export const teamHome = createRoute({
  getParentRoute: () => team,
  path: '/',
  beforeLoad: ({ context }) => {
    throw redirect({ ...homeOf(context.membership), replace: true });
  },
});
