import type { Membership } from '../../features/account/api/account.js';
import { texts } from './texts.js';

const PIT = { to: '/teams/$teamId/pit', text: texts.pit } as const;
const TRACKS = { to: '/teams/$teamId/tracks', text: texts.tracks } as const;
const MY_BIKE = { to: '/teams/$teamId/my-bike', text: texts.myBike } as const;
const PLANS = { to: '/teams/$teamId/test-plans', text: texts.plans } as const;
const WEEKEND = { to: '/teams/$teamId/weekend', text: texts.weekend } as const;
const TEAM = { to: '/teams/$teamId/team', text: texts.team } as const;

/** The pages a member uses, their first page first. */
export function pagesOf({ role, riderId }: Membership) {
  const ownBike = riderId === null ? [] : [MY_BIKE];
  if (role === 'rider') return [MY_BIKE, TRACKS];
  return role === 'mechanic'
    ? [PIT, TRACKS, WEEKEND, PLANS, ...ownBike, TEAM]
    : [TRACKS, WEEKEND, PLANS, PIT, ...ownBike, TEAM];
}
