import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { PageQuery, type Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { SpringUnitDto, SpringUnitInputDto, SpringUnitPageDto } from './spring-units.dto.js';
import { SpringUnitsService } from './spring-units.service.js';

@ApiTags('spring-units')
@Controller('teams/:teamId/spring-units')
export class SpringUnitsController {
  constructor(private readonly units: SpringUnitsService) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Forks and shocks of the team.' })
  @ApiOkResponse({ type: SpringUnitPageDto })
  list(@Scope() scope: TeamScope, @Query() page: PageQuery): Promise<Page<SpringUnitDto>> {
    return this.units.list(scope, page);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A spring unit.' })
  @ApiOkResponse({ type: SpringUnitDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<SpringUnitDto> {
    return this.units.get(scope, id);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post()
  @ApiOperation({ summary: 'Add a spring unit.' })
  @ApiCreatedResponse({ type: SpringUnitDto })
  create(@Scope() scope: TeamScope, @Body() input: SpringUnitInputDto): Promise<SpringUnitDto> {
    return this.units.create(scope, input);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Put(':id')
  @ApiOperation({ summary: 'Change a spring unit; send the ETag as If-Match.' })
  @ApiOkResponse({ type: SpringUnitDto })
  replace(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: SpringUnitInputDto,
  ): Promise<SpringUnitDto> {
    return this.units.replace(scope, id, version, input);
  }
}
