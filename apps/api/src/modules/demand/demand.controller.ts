import { REFERENCE_CONDITION } from '@loamledger/evidence';
import { Controller, Get, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { DemandQuery, TrackDemandDto } from './demand.dto.js';
import { TrackDemand } from './track-demand.js';

@ApiTags('demand')
@Controller('teams/:teamId/tracks/:trackId/demand')
export class DemandController {
  constructor(private readonly trackDemand: TrackDemand) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'How hard the track hits: every reading, and the forecast for each rider.' })
  @ApiOkResponse({ type: TrackDemandDto })
  onTrack(
    @Scope() scope: TeamScope,
    @Param('trackId', ParseUUIDPipe) trackId: string,
    @Query() query: DemandQuery,
  ): Promise<TrackDemandDto> {
    return this.trackDemand.onTrack(
      scope,
      trackId,
      query.end ?? 'fork',
      query.condition ?? REFERENCE_CONDITION,
    );
  }
}
