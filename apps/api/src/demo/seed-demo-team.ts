import type { INestApplicationContext } from '@nestjs/common';
import { AccountsService } from '../modules/accounts/accounts.service.js';
import { SignInsService } from '../modules/accounts/sign-ins.service.js';
import { BikesService } from '../modules/bikes/bikes.service.js';
import { DecisionsService } from '../modules/decisions/decisions.service.js';
import { RidersService } from '../modules/riders/riders.service.js';
import { LogRun } from '../modules/runs/log-run.js';
import { RunRecordsReader } from '../modules/runs/run-records.js';
import { RunsService } from '../modules/runs/runs.service.js';
import { SessionsService } from '../modules/sessions/sessions.service.js';
import { SpacersService } from '../modules/spacers/spacers.service.js';
import { SpringUnitsService } from '../modules/spring-units/spring-units.service.js';
import { MembersService } from '../modules/teams/members.service.js';
import { TracksService } from '../modules/tracks/tracks.service.js';
import { UnitServiceService } from '../modules/unit-service/unit-service.service.js';
import { MakeChange } from '../modules/workbench/make-change.js';
import { SetUpBike } from '../modules/workbench/set-up-bike.js';
import { TeamDatabase } from '../platform/database/team-database.js';
import { enterEquipment } from './enter-equipment.js';
import { enterPeople } from './enter-people.js';
import { SeasonEntry } from './enter-season.js';
import { enterWorkshop } from './enter-workshop.js';
import { SEASON, SEASON_SEED } from './season.js';
import { simulateSeason } from './simulator.js';

/**
 * Enters the demo team through the services that real input goes through, with their checks. All or nothing: a
 * process killed in the middle leaves no trace of it.
 */
export async function seedDemoTeam(app: INestApplicationContext): Promise<void> {
  const season = simulateSeason(SEASON, SEASON_SEED);
  const database = app.get(TeamDatabase);
  await database.allOrNothing(async () => {
    const people = await enterPeople({
      accounts: app.get(AccountsService),
      members: app.get(MembersService),
      riders: app.get(RidersService),
      signIns: app.get(SignInsService),
    });
    const equipment = await enterEquipment(
      { units: app.get(SpringUnitsService), bikes: app.get(BikesService), tracks: app.get(TracksService) },
      people,
    );
    const services = {
      sessions: app.get(SessionsService),
      setUpBike: app.get(SetUpBike),
      decisions: app.get(DecisionsService),
      makeChange: app.get(MakeChange),
      runs: app.get(RunsService),
      records: app.get(RunRecordsReader),
      logRun: app.get(LogRun),
      database,
    };
    await new SeasonEntry(services, people, equipment).enter(season);
    await enterWorkshop(
      { service: app.get(UnitServiceService), spacers: app.get(SpacersService) },
      people,
      equipment,
    );
  });
}
