import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpacersModule } from '../spacers/spacers.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { UnitServiceModule } from '../unit-service/unit-service.module.js';
import { TickStep } from './tick-step.js';
import { WaitingWorkReader } from './waiting-work.js';
import { WorkOrderReader } from './work-order-reader.js';
import { WorkOrdersController } from './work-orders.controller.js';
import { WorkOrdersQueries, WorkStepsQueries } from './work-orders.queries.js';
import { WorkOrdersService } from './work-orders.service.js';

@Module({
  imports: [BikesModule, SetupsModule, SpacersModule, SpringUnitsModule, UnitServiceModule],
  controllers: [WorkOrdersController],
  providers: [
    WorkOrdersService,
    WorkOrdersQueries,
    WorkStepsQueries,
    WorkOrderReader,
    WaitingWorkReader,
    TickStep,
  ],
  exports: [WaitingWorkReader],
})
export class WorkOrdersModule {}
