import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { SessionDto, SessionInputDto, SessionListQuery, SessionPageDto } from './sessions.dto.js';
import { SessionsService } from './sessions.service.js';

@ApiTags('sessions')
@Controller('teams/:teamId/sessions')
export class SessionsController {
  constructor(private readonly sessions: SessionsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Sessions, newest first.' })
  @ApiOkResponse({ type: SessionPageDto })
  list(@Scope() scope: TeamScope, @Query() query: SessionListQuery): Promise<Page<SessionDto>> {
    return this.sessions.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A session.' })
  @ApiOkResponse({ type: SessionDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<SessionDto> {
    return this.sessions.get(scope, id);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post()
  @ApiOperation({ summary: 'Open a session.' })
  @ApiCreatedResponse({ type: SessionDto })
  create(@Scope() scope: TeamScope, @Body() input: SessionInputDto): Promise<SessionDto> {
    return this.sessions.create(scope, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Put(':id')
  @ApiOperation({ summary: 'Change a session; send the ETag as If-Match. Its track stays.' })
  @ApiOkResponse({ type: SessionDto })
  replace(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: SessionInputDto,
  ): Promise<SessionDto> {
    return this.sessions.replace(scope, id, version, input);
  }
}
