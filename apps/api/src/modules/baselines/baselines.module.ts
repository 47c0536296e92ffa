import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { ComparisonsModule } from '../comparisons/comparisons.module.js';
import { DecisionsModule } from '../decisions/decisions.module.js';
import { DemandModule } from '../demand/demand.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { RunsModule } from '../runs/runs.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { TestPlansModule } from '../test-plans/test-plans.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { BaselineRecordsReader } from './baseline-records.js';
import { BaselinesController } from './baselines.controller.js';
import { BaselinesQueries } from './baselines.queries.js';
import { BaselinesService } from './baselines.service.js';
import { TakeBaseline } from './take-baseline.js';

@Module({
  imports: [
    BikesModule,
    BlindingModule,
    ComparisonsModule,
    DecisionsModule,
    DemandModule,
    RidersModule,
    RunsModule,
    SetupsModule,
    SpringUnitsModule,
    TestPlansModule,
    TracksModule,
  ],
  controllers: [BaselinesController],
  providers: [BaselinesService, BaselinesQueries, BaselineRecordsReader, TakeBaseline],
})
export class BaselinesModule {}
