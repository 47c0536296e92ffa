import { Module } from '@nestjs/common';
import { TracksModule } from '../tracks/tracks.module.js';
import { SessionsController } from './sessions.controller.js';
import { SessionsQueries } from './sessions.queries.js';
import { SessionsService } from './sessions.service.js';

@Module({
  imports: [TracksModule],
  controllers: [SessionsController],
  providers: [SessionsService, SessionsQueries],
  exports: [SessionsService],
})
export class SessionsModule {}
