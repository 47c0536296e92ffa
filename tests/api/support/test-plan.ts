import { SETUP, type Stored, type TestTeam } from './team.js';

/** Two set-ups of the team's bike: as it is, and with one spacer more in the fork. */
export async function twoSetups(team: TestTeam): Promise<{ before: Stored; after: Stored }> {
  const create = async (fork: object) =>
    (await team.mechanic.post(`${team.path}/setups`, { ...SETUP, fork, bikeId: team.bike.id }).expect(201))
      .body as Stored;
  const before = await create(SETUP.fork);
  return { before, after: await create({ ...SETUP.fork, spacers: 2 }) };
}

/** The body of a plan of one rider on one bike: four runs an arm, no warm-up. */
export const planBody = (team: TestTeam, { before, after }: { before: Stored; after: Stored }) => ({
  name: 'Does one spacer more help?',
  trackId: team.track.id,
  day: '2026-05-09',
  riders: [{ riderId: team.rider.id, bikeId: team.bike.id }],
  arms: [
    { name: 'As it is', setups: [{ bikeId: team.bike.id, setupId: before.id }] },
    { name: 'One spacer more', setups: [{ bikeId: team.bike.id, setupId: after.id }] },
  ],
  runsAnArm: 4,
  warmUps: 0,
  seed: 7,
});

interface PlannedRun {
  readonly riderId: string;
  readonly letter: string;
  readonly kind: 'warm-up' | 'counted';
  readonly position: number;
  readonly runId: string | null;
}

export interface TestPlan extends Stored {
  readonly arms: readonly {
    letter: string;
    name: string | null;
    current: boolean | null;
    setups: Stored[];
  }[];
  readonly runs: readonly PlannedRun[];
  readonly precision: { varianceInflation: number | null };
  readonly statement: { sentences: string[]; scatterPct: number | null };
}

export interface PlanStep {
  readonly runId: string;
  readonly next: PlannedRun | null;
  readonly nextSetupId: string | null;
  readonly ridden: number;
  readonly left: number;
  readonly voidedRunIds: readonly string[];
  readonly restIsStale: boolean;
}
