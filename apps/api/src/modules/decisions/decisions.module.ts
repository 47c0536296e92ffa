import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { DecisionsController } from './decisions.controller.js';
import { DecisionsQueries } from './decisions.queries.js';
import { DecisionsService } from './decisions.service.js';

@Module({
  imports: [BikesModule, BlindingModule],
  controllers: [DecisionsController],
  providers: [DecisionsService, DecisionsQueries],
  exports: [DecisionsService],
})
export class DecisionsModule {}
