import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { DecisionsModule } from '../decisions/decisions.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { SetupsController } from './setups.controller.js';
import { SetupsQueries } from './setups.queries.js';
import { SetupsService } from './setups.service.js';

@Module({
  imports: [BikesModule, BlindingModule, SpringUnitsModule, TracksModule, DecisionsModule],
  controllers: [SetupsController],
  providers: [SetupsService, SetupsQueries],
  exports: [SetupsService],
})
export class SetupsModule {}
