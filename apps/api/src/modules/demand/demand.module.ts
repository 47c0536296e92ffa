import { Module } from '@nestjs/common';
import { RidersModule } from '../riders/riders.module.js';
import { RunsModule } from '../runs/runs.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { DemandController } from './demand.controller.js';
import { DemandQueries } from './demand.queries.js';
import { DemandService } from './demand.service.js';
import { TrackDemand } from './track-demand.js';

@Module({
  imports: [RidersModule, RunsModule, TracksModule],
  controllers: [DemandController],
  providers: [DemandService, DemandQueries, TrackDemand],
  exports: [DemandService],
})
export class DemandModule {}
