import { Module } from '@nestjs/common';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { UnitServiceController } from './unit-service.controller.js';
import { UnitServiceQueries } from './unit-service.queries.js';
import { UnitServiceService } from './unit-service.service.js';

@Module({
  imports: [SpringUnitsModule],
  controllers: [UnitServiceController],
  providers: [UnitServiceService, UnitServiceQueries],
  exports: [UnitServiceService],
})
export class UnitServiceModule {}
