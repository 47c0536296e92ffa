import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { DecisionsModule } from '../decisions/decisions.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { SetupsController } from './setups.controller.js';
import { SetupsService } from './setups.service.js';
import { StoredSetupsModule } from './stored-setups.module.js';

@Module({
  imports: [BikesModule, BlindingModule, SpringUnitsModule, DecisionsModule, StoredSetupsModule],
  controllers: [SetupsController],
  providers: [SetupsService],
  exports: [SetupsService],
})
export class SetupsModule {}
