import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpacersModule } from '../spacers/spacers.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { UnitServiceModule } from '../unit-service/unit-service.module.js';
import { WorkOrdersModule } from '../work-orders/work-orders.module.js';
import { PitController } from './pit.controller.js';
import { PitQueries } from './pit.queries.js';
import { PitService } from './pit.service.js';

@Module({
  imports: [
    BikesModule,
    RidersModule,
    SetupsModule,
    SpacersModule,
    SpringUnitsModule,
    TracksModule,
    UnitServiceModule,
    WorkOrdersModule,
  ],
  controllers: [PitController],
  providers: [PitService, PitQueries],
})
export class PitModule {}
