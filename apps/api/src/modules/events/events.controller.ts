import { Controller, Get, Req, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Roles } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { SignInCookie } from '../accounts/sign-in-cookie.js';
import { TeamStreams } from './team-streams.js';

@ApiTags('events')
@Controller('teams/:teamId/events')
export class EventsController {
  constructor(
    private readonly streams: TeamStreams,
    private readonly cookie: SignInCookie,
  ) {}

  @Roles(...ROLES)
  @Get()
  @ApiOperation({
    summary: 'What changes in the team, as it happens.',
    description:
      'Server-sent events. `ready`: changes are told from here on; read again whatever was read before, since nothing ' +
      'is replayed. `change`: `{kind, bikeId, riderId}` of what has changed, never its contents. `away`: the database ' +
      'is away, and a `ready` follows. A rider is told of what is their own, and of what is the team’s only that it ' +
      'has changed. The stream ends when the sign-in or the membership does.',
  })
  @ApiOkResponse({
    description: 'A stream of events that does not end by itself.',
    content: { 'text/event-stream': { schema: { type: 'string' } } },
  })
  open(@Scope() scope: TeamScope, @Req() request: FastifyRequest, @Res() reply: FastifyReply): void {
    const { teamId, accountId, role, riderId } = scope;
    const token = this.cookie.tokenOf(request) ?? '';
    const stream = this.streams.open({ teamId, accountId, role, riderId }, token);
    void reply
      .type('text/event-stream; charset=utf-8')
      .header('cache-control', 'no-store, no-transform')
      // The name that one common reverse proxy reads; others are told in their own settings.
      .header('x-accel-buffering', 'no')
      .send(stream.body);
  }
}
