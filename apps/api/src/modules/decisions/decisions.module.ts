import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { StoredRunsModule } from '../runs/stored-runs.module.js';
import { StoredSetupsModule } from '../setups/stored-setups.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { DecisionContextReader } from './decision-context.js';
import { DecisionsController } from './decisions.controller.js';
import { DecisionsQueries } from './decisions.queries.js';
import { DecisionsService } from './decisions.service.js';
import { ExportDecisions } from './export-decisions.js';

@Module({
  imports: [BikesModule, BlindingModule, RidersModule, StoredRunsModule, StoredSetupsModule, TracksModule],
  controllers: [DecisionsController],
  providers: [DecisionsService, DecisionsQueries, DecisionContextReader, ExportDecisions],
  exports: [DecisionsService],
})
export class DecisionsModule {}
