import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { DemandModule } from '../demand/demand.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
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
    DemandModule,
    RidersModule,
    SetupsModule,
    SpringUnitsModule,
    TracksModule,
  ],
  controllers: [BaselinesController],
  providers: [BaselinesService, BaselinesQueries, BaselineRecordsReader, TakeBaseline],
})
export class BaselinesModule {}
