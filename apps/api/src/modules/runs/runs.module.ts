import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { SessionsModule } from '../sessions/sessions.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { HitHeights } from './hit-heights.js';
import { LogRun } from './log-run.js';
import { RunRecordsReader } from './run-records.js';
import { RunsController } from './runs.controller.js';
import { RunsQueries } from './runs.queries.js';
import { RunsService } from './runs.service.js';

@Module({
  imports: [BikesModule, RidersModule, SessionsModule, SetupsModule, SpringUnitsModule, TracksModule],
  controllers: [RunsController],
  providers: [RunsService, RunsQueries, LogRun, HitHeights, RunRecordsReader],
  exports: [RunsService],
})
export class RunsModule {}
