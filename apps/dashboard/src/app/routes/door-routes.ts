import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { homeOf } from '../home.js';
import { requireAccount } from './require-account.js';
import { root, textSearch } from './root.js';

const landing = createRoute({
  getParentRoute: () => root,
  path: '/',
  beforeLoad: async ({ location }) => {
    const [first] = (await requireAccount(location.href)).memberships;
    if (first !== undefined) throw redirect({ ...homeOf(first), replace: true });
  },
  component: lazyRouteComponent(() => import('../pages/no-team-page.js'), 'NoTeamPage'),
});

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: (search): { to?: string } => textSearch(search, 'to'),
  component: lazyRouteComponent(() => import('../pages/sign-in-page.js'), 'SignInPage'),
});

const signUp = createRoute({
  getParentRoute: () => root,
  path: '/sign-up',
  component: lazyRouteComponent(() => import('../pages/sign-up-page.js'), 'SignUpPage'),
});

const join = createRoute({
  getParentRoute: () => root,
  path: '/join',
  component: lazyRouteComponent(() => import('../pages/join-page.js'), 'JoinPage'),
});

const signInLink = createRoute({
  getParentRoute: () => root,
  path: '/sign-in-link',
  component: lazyRouteComponent(() => import('../pages/sign-in-link-page.js'), 'SignInLinkPage'),
});

const newPassword = createRoute({
  getParentRoute: () => root,
  path: '/new-password',
  component: lazyRouteComponent(() => import('../pages/new-password-page.js'), 'NewPasswordPage'),
});

/** The pages before a team is entered. */
export const doorRoutes = [landing, signIn, signUp, join, signInLink, newPassword] as const;
