import { Module } from '@nestjs/common';
import { TracksController } from './tracks.controller.js';
import { TracksQueries } from './tracks.queries.js';
import { TracksService } from './tracks.service.js';

@Module({
  controllers: [TracksController],
  providers: [TracksService, TracksQueries],
  exports: [TracksService],
})
export class TracksModule {}
