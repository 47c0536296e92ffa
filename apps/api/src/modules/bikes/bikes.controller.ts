import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { PageQuery, type Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { BikeDto, BikeInputDto, BikePageDto } from './bikes.dto.js';
import { BikesService } from './bikes.service.js';

@ApiTags('bikes')
@Controller('teams/:teamId/bikes')
export class BikesController {
  constructor(private readonly bikes: BikesService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Bikes of the team; a rider sees their own.' })
  @ApiOkResponse({ type: BikePageDto })
  list(@Scope() scope: TeamScope, @Query() page: PageQuery): Promise<Page<BikeDto>> {
    return this.bikes.list(scope, page);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A bike.' })
  @ApiOkResponse({ type: BikeDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<BikeDto> {
    return this.bikes.get(scope, id);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post()
  @ApiOperation({ summary: 'Add a bike.' })
  @ApiCreatedResponse({ type: BikeDto })
  create(@Scope() scope: TeamScope, @Body() input: BikeInputDto): Promise<BikeDto> {
    return this.bikes.create(scope, input);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Put(':id')
  @ApiOperation({ summary: 'Change a bike; send the ETag as If-Match.' })
  @ApiOkResponse({ type: BikeDto })
  replace(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: BikeInputDto,
  ): Promise<BikeDto> {
    return this.bikes.replace(scope, id, version, input);
  }
}
