import { Module } from '@nestjs/common';
import { RidersModule } from '../riders/riders.module.js';
import { TestPlansModule } from '../test-plans/test-plans.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { PlannedSessionsController } from './planned-sessions.controller.js';
import { PlannedSessionsQueries } from './planned-sessions.queries.js';
import { PlannedSessionsService } from './planned-sessions.service.js';

@Module({
  imports: [RidersModule, TestPlansModule, TracksModule],
  controllers: [PlannedSessionsController],
  providers: [PlannedSessionsService, PlannedSessionsQueries],
})
export class PlannedSessionsModule {}
