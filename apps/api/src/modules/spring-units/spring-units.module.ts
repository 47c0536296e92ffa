import { Module } from '@nestjs/common';
import { SpacersModule } from '../spacers/spacers.module.js';
import { SpringUnitsController } from './spring-units.controller.js';
import { SpringUnitsQueries } from './spring-units.queries.js';
import { SpringUnitsService } from './spring-units.service.js';

@Module({
  imports: [SpacersModule],
  controllers: [SpringUnitsController],
  providers: [SpringUnitsService, SpringUnitsQueries],
  exports: [SpringUnitsService],
})
export class SpringUnitsModule {}
