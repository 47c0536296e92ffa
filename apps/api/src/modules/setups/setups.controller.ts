import { Controller, Get, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { SetupDto, SetupListQuery, SetupPageDto } from './setups.dto.js';
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
}
