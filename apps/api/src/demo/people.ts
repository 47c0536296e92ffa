import type { Role } from '../platform/http/scope.js';
import type { RiderInputDto } from '../modules/riders/riders.dto.js';

/** Shown wherever the team is: nobody should take it for a real one. */
export const DEMO_TEAM_NAME = 'Demo team (everything invented)';

/** The same for every demo sign-in; no secret, it is printed at every start. */
export const DEMO_PASSWORD = 'invented-demo-team';

interface DemoRider {
  readonly input: RiderInputDto;
  /** What the tool is not told. */
  readonly truth: {
    /** Log of how much harder than the team this rider hits. */
    readonly logHit: number;
    /** Time over the team's. */
    readonly pace: number;
  };
  /** Reads the travel left above the ring rather than the travel used. */
  readonly readsTravelLeft: boolean;
}

/** The invented riders. */
export const RIDERS = {
  ash: {
    input: {
      name: 'Rider Ash',
      readyMassKg: 77.5,
      readyMassSource: 'measured',
      acceptedRiskPct: 5,
      fork: { sagLowPct: 15, sagHighPct: 20, reservePct: 7 },
      shock: { sagLowPct: 25, sagHighPct: 30, reservePct: 7 },
    },
    truth: { logHit: 0.05, pace: 0.985 },
    readsTravelLeft: false,
  },
  bramble: {
    input: { name: 'Rider Bramble', readyMassKg: 89, readyMassSource: 'measured' },
    truth: { logHit: 0.1, pace: 1.0 },
    readsTravelLeft: false,
  },
  clover: {
    input: {
      name: 'Rider Clover',
      readyMassKg: 61,
      readyMassSource: 'entered',
      acceptedRiskPct: 4,
      fork: { sagLowPct: 16, sagHighPct: 21, reservePct: 9 },
      shock: { sagLowPct: 26, sagHighPct: 31, reservePct: 8 },
    },
    truth: { logHit: -0.12, pace: 1.012 },
    readsTravelLeft: true,
  },
  dune: {
    input: { name: 'Rider Dune', readyMassKg: 70.5, readyMassSource: 'measured' },
    truth: { logHit: 0.08, pace: 0.97 },
    readsTravelLeft: false,
  },
  elder: {
    input: { name: 'Rider Elder', readyMassKg: 95, readyMassSource: 'assumed' },
    truth: { logHit: -0.04, pace: 1.045 },
    readsTravelLeft: false,
  },
} as const satisfies Record<string, DemoRider>;

export type RiderKey = keyof typeof RIDERS;

/** A person who may sign in; `rider` for who rides. */
interface DemoPerson {
  readonly displayName: string;
  readonly email: string;
  readonly role: Role;
  readonly rider: RiderKey | null;
}

/** The first makes the team and invites the others. */
export const MECHANIC: DemoPerson = {
  displayName: 'Mechanic Fern',
  email: 'mechanic@demo.example',
  role: 'mechanic',
  rider: null,
};

export const INVITED: readonly DemoPerson[] = [
  { displayName: 'Coach Gorse', email: 'coach@demo.example', role: 'coach', rider: null },
  { displayName: 'Rider Ash', email: 'ash@demo.example', role: 'rider', rider: 'ash' },
  { displayName: 'Rider Bramble', email: 'bramble@demo.example', role: 'rider', rider: 'bramble' },
  { displayName: 'Rider Clover', email: 'clover@demo.example', role: 'rider', rider: 'clover' },
  { displayName: 'Rider Dune', email: 'dune@demo.example', role: 'rider', rider: 'dune' },
  { displayName: 'Rider Elder', email: 'elder@demo.example', role: 'rider', rider: 'elder' },
];
