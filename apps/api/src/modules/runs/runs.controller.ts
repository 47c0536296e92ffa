import { Body, Controller, Get, HttpCode, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { RunInputDto, VoidInputDto } from './run-input.dto.js';
import { RunDto, RunListQuery, RunPageDto } from './runs.dto.js';
import { RunsService } from './runs.service.js';

@ApiTags('runs')
@Controller('teams/:teamId/runs')
export class RunsController {
  constructor(private readonly runs: RunsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Runs, newest first; a rider sees their own.' })
  @ApiOkResponse({ type: RunPageDto })
  list(@Scope() scope: TeamScope, @Query() query: RunListQuery): Promise<Page<RunDto>> {
    return this.runs.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A run.' })
  @ApiOkResponse({ type: RunDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<RunDto> {
    return this.runs.get(scope, id);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post()
  @ApiOperation({ summary: 'Log a run.' })
  @ApiCreatedResponse({ type: RunDto })
  log(@Scope() scope: TeamScope, @Body() input: RunInputDto): Promise<RunDto> {
    return this.runs.log(scope, input);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post(':id/void')
  @HttpCode(200)
  @ApiOperation({ summary: 'Void a run with a reason; it stays and is shown.' })
  @ApiOkResponse({ type: RunDto })
  voidRun(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: VoidInputDto,
  ): Promise<RunDto> {
    return this.runs.voidRun(scope, id, input);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post(':id/restore')
  @HttpCode(200)
  @ApiOperation({ summary: 'Let a voided run count again.' })
  @ApiOkResponse({ type: RunDto })
  restore(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<RunDto> {
    return this.runs.restore(scope, id);
  }
}
