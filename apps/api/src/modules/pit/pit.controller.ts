import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import { PitDto, PitQuery } from './pit.dto.js';
import { PitService } from './pit.service.js';

@ApiTags('pit')
@Controller('teams/:teamId/pit')
export class PitController {
  constructor(private readonly pit: PitService) {}

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get()
  @ApiOperation({
    summary:
      'The fleet at a glance: what is in every bike, what to pump to today, and what waits to be done.',
  })
  @ApiOkResponse({ type: PitDto })
  read(@Scope() scope: TeamScope, @Query() query: PitQuery): Promise<PitDto> {
    return this.pit.read(scope, query);
  }
}
