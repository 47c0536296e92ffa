import {
  Body,
  Controller,
  Delete,
  Get,
  HttpCode,
  Param,
  ParseUUIDPipe,
  Post,
  Put,
  Query,
} from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import {
  PlannedSessionDto,
  PlannedSessionInputDto,
  PlannedSessionListQuery,
  PlannedSessionPageDto,
} from './planned-sessions.dto.js';
import { PlannedSessionsService } from './planned-sessions.service.js';

@ApiTags('planned sessions')
@Controller('teams/:teamId/planned-sessions')
export class PlannedSessionsController {
  constructor(private readonly sessions: PlannedSessionsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Sessions that are planned, last planned first; a rider sees their own.' })
  @ApiOkResponse({ type: PlannedSessionPageDto })
  list(@Scope() scope: TeamScope, @Query() query: PlannedSessionListQuery): Promise<Page<PlannedSessionDto>> {
    return this.sessions.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A session that is planned.' })
  @ApiOkResponse({ type: PlannedSessionDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<PlannedSessionDto> {
    return this.sessions.get(scope, id);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Post()
  @ApiOperation({ summary: 'Plan a session.' })
  @ApiCreatedResponse({ type: PlannedSessionDto })
  create(@Scope() scope: TeamScope, @Body() input: PlannedSessionInputDto): Promise<PlannedSessionDto> {
    return this.sessions.create(scope, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Put(':id')
  @ApiOperation({ summary: 'Change a session that is planned; send the ETag as If-Match.' })
  @ApiOkResponse({ type: PlannedSessionDto })
  replace(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: PlannedSessionInputDto,
  ): Promise<PlannedSessionDto> {
    return this.sessions.replace(scope, id, version, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Delete(':id')
  @HttpCode(204)
  @ApiOperation({ summary: 'Take a session off the plan.' })
  @ApiNoContentResponse()
  remove(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<void> {
    return this.sessions.remove(scope, id);
  }
}
