import { Module } from '@nestjs/common';
import { MembersQueries } from './members.queries.js';
import { MemberLinksService } from './member-links.service.js';
import { MembersService } from './members.service.js';
import { TeamsController } from './teams.controller.js';

@Module({
  controllers: [TeamsController],
  providers: [MembersService, MemberLinksService, MembersQueries],
  exports: [MembersService],
})
export class TeamsModule {}
