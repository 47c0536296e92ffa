import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { PageQuery, type Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { RiderDto, RiderInputDto, RiderPageDto } from './riders.dto.js';
import { RidersService } from './riders.service.js';

@ApiTags('riders')
@Controller('teams/:teamId/riders')
export class RidersController {
  constructor(private readonly riders: RidersService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Riders of the team; a rider sees only themselves.' })
  @ApiOkResponse({ type: RiderPageDto })
  list(@Scope() scope: TeamScope, @Query() page: PageQuery): Promise<Page<RiderDto>> {
    return this.riders.list(scope, page);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A rider.' })
  @ApiOkResponse({ type: RiderDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<RiderDto> {
    return this.riders.get(scope, id);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post()
  @ApiOperation({ summary: 'Add a rider.' })
  @ApiCreatedResponse({ type: RiderDto })
  create(@Scope() scope: TeamScope, @Body() input: RiderInputDto): Promise<RiderDto> {
    return this.riders.create(scope, input);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Put(':id')
  @ApiOperation({ summary: 'Change a rider; send the ETag as If-Match.' })
  @ApiOkResponse({ type: RiderDto })
  replace(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: RiderInputDto,
  ): Promise<RiderDto> {
    return this.riders.replace(scope, id, version, input);
  }
}
