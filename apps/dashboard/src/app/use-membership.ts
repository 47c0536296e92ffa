import { getRouteApi } from '@tanstack/react-router';

const team = getRouteApi('/teams/$teamId');

/** Who is here: account, team and role, as the team's route has proven them. */
export const useMembership = () =>
  team.useRouteContext({ select: ({ account, membership }) => ({ account, membership }) });
