import { Module } from '@nestjs/common';
import { SpacersController } from './spacers.controller.js';
import { SpacersQueries } from './spacers.queries.js';
import { SpacersService } from './spacers.service.js';

@Module({
  controllers: [SpacersController],
  providers: [SpacersService, SpacersQueries],
  exports: [SpacersService],
})
export class SpacersModule {}
