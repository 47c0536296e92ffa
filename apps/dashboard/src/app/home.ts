import type { Membership } from '../features/account/api/account.js';

/** The first page of each of the three people. */
const HOME = {
  mechanic: '/teams/$teamId/pit',
  coach: '/teams/$teamId/tracks',
  rider: '/teams/$teamId/my-bike',
} as const;

export const homeOf = (membership: Membership) => ({
  to: HOME[membership.role],
  params: { teamId: membership.teamId },
});
