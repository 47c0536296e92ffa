import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { RestoreInputDto, SetupDto, SetupInputDto, SetupListQuery, SetupPageDto } from './setups.dto.js';
import { SetupsService } from './setups.service.js';

@ApiTags('setups')
@Controller('teams/:teamId/setups')
export class SetupsController {
  constructor(private readonly setups: SetupsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Set-ups, newest first.' })
  @ApiOkResponse({ type: SetupPageDto })
  list(@Scope() scope: TeamScope, @Query() query: SetupListQuery): Promise<Page<SetupDto>> {
    return this.setups.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A set-up.' })
  @ApiOkResponse({ type: SetupDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<SetupDto> {
    return this.setups.get(scope, id);
  }

  @Roles('mechanic', 'rider')
  @TokenScope('change-set-ups')
  @Post()
  @ApiOperation({ summary: 'Set a bike up: makes its next revision and a decision record.' })
  @ApiCreatedResponse({ type: SetupDto })
  create(@Scope() scope: TeamScope, @Body() input: SetupInputDto): Promise<SetupDto> {
    return this.setups.create(scope, input);
  }

  @Roles('mechanic', 'rider')
  @TokenScope('change-set-ups')
  @Post(':id/restore')
  @ApiOperation({ summary: 'Go back to this set-up: makes a new revision equal to it.' })
  @ApiCreatedResponse({ type: SetupDto })
  restore(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: RestoreInputDto,
  ): Promise<SetupDto> {
    return this.setups.restore(scope, id, input.reason);
  }
}
