import { Module } from '@nestjs/common';
import { RidersController } from './riders.controller.js';
import { RidersQueries } from './riders.queries.js';
import { RidersService } from './riders.service.js';

@Module({
  controllers: [RidersController],
  providers: [RidersService, RidersQueries],
  exports: [RidersService],
})
export class RidersModule {}
