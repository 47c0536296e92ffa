import { Body, Controller, Get, Header, Param, ParseUUIDPipe, Put, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import {
  DecisionDto,
  DecisionFilter,
  DecisionListQuery,
  DecisionPageDto,
  OutcomeInputDto,
} from './decisions.dto.js';
import { DecisionsService } from './decisions.service.js';
import { ExportDecisions } from './export-decisions.js';

@ApiTags('decisions')
@Controller('teams/:teamId/decisions')
export class DecisionsController {
  constructor(
    private readonly decisions: DecisionsService,
    private readonly exports: ExportDecisions,
  ) {}

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
  @Get('export')
  @Header('content-disposition', 'attachment; filename="decisions.csv"')
  @Header('content-type', 'text/csv; charset=utf-8')
  @ApiOperation({ summary: 'Decision records as CSV, oldest first; a rider gets those of their own bikes.' })
  @ApiProduces('text/csv')
  @ApiOkResponse({ schema: { type: 'string', example: 'decided_at,bike,rider,track,change,reason\n' } })
  csv(@Scope() scope: TeamScope, @Query() filter: DecisionFilter): Promise<string> {
    return this.exports.csv(scope, filter);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get('export/json')
  @Header('content-disposition', 'attachment; filename="decisions.json"')
  @ApiOperation({ summary: 'Decision records whole, oldest first; a rider gets those of their own bikes.' })
  @ApiOkResponse({ type: DecisionDto, isArray: true })
  json(@Scope() scope: TeamScope, @Query() filter: DecisionFilter): Promise<DecisionDto[]> {
    return this.exports.json(scope, filter);
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
