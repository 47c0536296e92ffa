import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { RunsModule } from '../runs/runs.module.js';
import { ScatterModule } from '../scatter/scatter.module.js';
import { SessionsModule } from '../sessions/sessions.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { PlanReader } from './plan-reader.js';
import { PlanRecords } from './plan-records.js';
import { PlanRunsService } from './plan-runs.service.js';
import { TestPlansController } from './test-plans.controller.js';
import { TestPlansQueries } from './test-plans.queries.js';
import { TestPlansService } from './test-plans.service.js';

@Module({
  imports: [BikesModule, RidersModule, RunsModule, ScatterModule, SessionsModule, SetupsModule, TracksModule],
  controllers: [TestPlansController],
  providers: [TestPlansService, TestPlansQueries, PlanReader, PlanRecords, PlanRunsService],
  exports: [PlanReader],
})
export class TestPlansModule {}
