import { Stack } from '@mantine/core';
import { Link, Outlet } from '@tanstack/react-router';
import { texts } from '../texts.js';
import { useMembership } from '../use-membership.js';
import classes from './team-data-page.module.css';

const PAGES = [
  { to: '/teams/$teamId/team/spring-units', text: texts.springUnits },
  { to: '/teams/$teamId/team/spacers', text: texts.spacers },
  { to: '/teams/$teamId/team/riders', text: texts.riders },
  { to: '/teams/$teamId/team/bikes', text: texts.bikes },
  { to: '/teams/$teamId/team/members', text: texts.members },
] as const;

const MECHANICS_PAGES = [
  { to: '/teams/$teamId/first-steps', text: texts.firstSteps },
  { to: '/teams/$teamId/team/tokens', text: texts.tokens },
  { to: '/teams/$teamId/team/audit', text: texts.audit },
  { to: '/teams/$teamId/team/archive', text: texts.archive },
] as const;

/** The frame of the team's own data, in the order in which a new team enters it. */
export function TeamDataPage() {
  const { membership } = useMembership();
  const pages = membership.role === 'mechanic' ? [...PAGES, ...MECHANICS_PAGES] : PAGES;
  return (
    <Stack gap="lg">
      <nav aria-label={texts.teamData} className={classes.pages}>
        {pages.map(({ to, text }) => (
          <Link key={to} to={to} params={{ teamId: membership.teamId }}>
            {text}
          </Link>
        ))}
      </nav>
      <Outlet />
    </Stack>
  );
}
