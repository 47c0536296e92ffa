import { Module } from '@nestjs/common';
import { RidersModule } from '../riders/riders.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { BikesController } from './bikes.controller.js';
import { BikesQueries } from './bikes.queries.js';
import { BikesService } from './bikes.service.js';

@Module({
  imports: [RidersModule, SpringUnitsModule],
  controllers: [BikesController],
  providers: [BikesService, BikesQueries],
  exports: [BikesService],
})
export class BikesModule {}
