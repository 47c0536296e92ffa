import type { LogRun } from '../modules/runs/log-run.js';
import type { RunRecordsReader } from '../modules/runs/run-records.js';
import { RunInputDto, VoidInputDto } from '../modules/runs/run-input.dto.js';
import type { RunsService } from '../modules/runs/runs.service.js';
import type { SessionsService } from '../modules/sessions/sessions.service.js';
import type { TeamDatabase } from '../platform/database/team-database.js';
import type { TeamScope } from '../platform/http/scope.js';
import { checked } from './checked.js';
import type { SimulatedRun } from './simulator.js';

/** What runs are entered through. */
export interface RunServices {
  readonly database: TeamDatabase;
  readonly sessions: SessionsService;
  readonly records: RunRecordsReader;
  readonly logRun: LogRun;
  readonly runs: RunsService;
}

/** A rider's runs of one session on one bike. */
interface EnteredStint {
  readonly rider: TeamScope;
  readonly sessionId: string;
  readonly bikeId: string;
  readonly runs: readonly SimulatedRun[];
}

/** The rider logs the runs in one go, on the set-up that the bike has now, as a notebook of runs is taken in. */
export async function logStint(services: RunServices, stint: EnteredStint): Promise<void> {
  const { database, sessions, records, logRun } = services;
  const { rider, sessionId, bikeId, runs } = stint;
  const inputs: RunInputDto[] = [];
  for (const { input } of runs) inputs.push(await checked(RunInputDto, { ...input, sessionId, bikeId }));
  await database.inTeam(rider, async (transaction) => {
    const { teamId } = rider;
    const { riderId } = await records.visibleBike(transaction, rider, bikeId);
    const setup = await records.latestSetup(transaction, teamId, bikeId);
    if (!setup) throw new Error('The scenario rides a bike before its first set-up.');
    const keys = { sessionId, riderId, bikeId, setupId: setup.id };
    const found = await records.within(transaction, teamId)(keys);
    for (const input of inputs) logRun.check(input, found);
    await sessions.lock(transaction, teamId, sessionId);
    await logRun.logMany(
      transaction,
      rider,
      inputs.map((input) => ({ input, records: found })),
    );
  });
}

/** The mechanic voids the runs whose mishap the rider has left out. */
export async function voidLater(
  services: RunServices,
  mechanic: TeamScope,
  { sessionId, bikeId, runs }: EnteredStint,
): Promise<void> {
  const toVoid = runs.filter(({ voidedLater }) => voidedLater !== null);
  if (toVoid.length === 0) return;
  const { items } = await services.runs.list(mechanic, { sessionId, bikeId, limit: runs.length });
  for (const { input, voidedLater } of toVoid) {
    const stored = items.find(({ startedAt }) => startedAt === input.startedAt);
    if (!stored || !voidedLater) throw new Error(`The run of ${input.startedAt} was not stored.`);
    await services.runs.voidRun(mechanic, stored.id, await checked(VoidInputDto, voidedLater));
  }
}
