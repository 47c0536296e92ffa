import { Controller, Get, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { ComparisonQuery } from './comparison-query.dto.js';
import { ComparisonDto } from './comparison.dto.js';
import { ComparisonsService } from './comparisons.service.js';

@ApiTags('comparisons')
@Controller('teams/:teamId')
export class ComparisonsController {
  constructor(private readonly comparisons: ComparisonsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get('test-plans/:id/comparison')
  @ApiOperation({ summary: "Time and feel of a plan's arms, as far as it may be looked at now." })
  @ApiOkResponse({ type: ComparisonDto })
  ofPlan(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<ComparisonDto> {
    return this.comparisons.ofPlan(scope, id);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get('comparisons')
  @ApiOperation({ summary: 'Time and feel of set-ups of a bike that were ridden on a track.' })
  @ApiOkResponse({ type: ComparisonDto })
  ofSetups(@Scope() scope: TeamScope, @Query() query: ComparisonQuery): Promise<ComparisonDto> {
    return this.comparisons.ofSetups(scope, query);
  }
}
