import { Module } from '@nestjs/common';
import { ChangeListener } from '../../platform/live/change-listener.js';
import { AccountsModule } from '../accounts/accounts.module.js';
import { EventsController } from './events.controller.js';
import { TeamStreams } from './team-streams.js';

@Module({
  imports: [AccountsModule],
  controllers: [EventsController],
  providers: [TeamStreams, ChangeListener],
})
export class EventsModule {}
