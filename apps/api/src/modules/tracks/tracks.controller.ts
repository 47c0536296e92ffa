import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { PageQuery, type Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { TrackDto, TrackInputDto, TrackPageDto } from './tracks.dto.js';
import { TracksService } from './tracks.service.js';

@ApiTags('tracks')
@Controller('teams/:teamId/tracks')
export class TracksController {
  constructor(private readonly tracks: TracksService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Tracks of the team.' })
  @ApiOkResponse({ type: TrackPageDto })
  list(@Scope() scope: TeamScope, @Query() page: PageQuery): Promise<Page<TrackDto>> {
    return this.tracks.list(scope, page);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A track.' })
  @ApiOkResponse({ type: TrackDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<TrackDto> {
    return this.tracks.get(scope, id);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Post()
  @ApiOperation({ summary: 'Add a track.' })
  @ApiCreatedResponse({ type: TrackDto })
  create(@Scope() scope: TeamScope, @Body() input: TrackInputDto): Promise<TrackDto> {
    return this.tracks.create(scope, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Put(':id')
  @ApiOperation({ summary: 'Change a track; send the ETag as If-Match.' })
  @ApiOkResponse({ type: TrackDto })
  replace(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: TrackInputDto,
  ): Promise<TrackDto> {
    return this.tracks.replace(scope, id, version, input);
  }
}
