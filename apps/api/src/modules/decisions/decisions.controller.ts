import { Body, Controller, Get, Param, ParseUUIDPipe, Put, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { DecisionDto, DecisionListQuery, DecisionPageDto, OutcomeInputDto } from './decisions.dto.js';
import { DecisionsService } from './decisions.service.js';

@ApiTags('decisions')
@Controller('teams/:teamId/decisions')
export class DecisionsController {
  constructor(private readonly decisions: DecisionsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Decision records, newest first.' })
  @ApiOkResponse({ type: DecisionPageDto })
  list(@Scope() scope: TeamScope, @Query() query: DecisionListQuery): Promise<Page<DecisionDto>> {
    return this.decisions.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A decision record.' })
  @ApiOkResponse({ type: DecisionDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<DecisionDto> {
    return this.decisions.get(scope, id);
  }

  @Roles(...ROLES)
  @TokenScope('change-set-ups')
  @Put(':id/outcome')
  @ApiOperation({ summary: 'Enter what came of a decision, once; send the ETag as If-Match.' })
  @ApiOkResponse({ type: DecisionDto })
  enterOutcome(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: OutcomeInputDto,
  ): Promise<DecisionDto> {
    return this.decisions.enterOutcome(scope, id, version, input);
  }
}
