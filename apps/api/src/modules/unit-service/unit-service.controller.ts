import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { PageQuery, type Page } from '../../platform/http/page.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import {
  ServiceEntryDto,
  ServiceEntryInputDto,
  ServiceEntryPageDto,
  TakeBackInputDto,
  UnitCareInputDto,
  UnitServiceDto,
} from './unit-service.dto.js';
import { UnitServiceService } from './unit-service.service.js';

@ApiTags('unit-service')
@Controller('teams/:teamId')
export class UnitServiceController {
  constructor(private readonly service: UnitServiceService) {}

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get('spring-units/:id/service')
  @ApiOperation({ summary: 'How a unit stands against its service interval.' })
  @ApiOkResponse({ type: UnitServiceDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<UnitServiceDto> {
    return this.service.get(scope, id);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('spring-units/:id/care')
  @ApiOperation({ summary: "Enter what a unit's manual says of its service; the newest counts." })
  @ApiCreatedResponse({ type: UnitServiceDto })
  enterCare(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: UnitCareInputDto,
  ): Promise<UnitServiceDto> {
    return this.service.enterCare(scope, id, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get('spring-units/:id/service-entries')
  @ApiOperation({ summary: 'Services of a unit and riding entered by hand, newest first.' })
  @ApiOkResponse({ type: ServiceEntryPageDto })
  entries(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() page: PageQuery,
  ): Promise<Page<ServiceEntryDto>> {
    return this.service.entries(scope, id, page);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('spring-units/:id/service-entries')
  @ApiOperation({ summary: 'Record a service that was done, or riding that no run tells of.' })
  @ApiCreatedResponse({ type: ServiceEntryDto })
  enter(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: ServiceEntryInputDto,
  ): Promise<ServiceEntryDto> {
    return this.service.enter(scope, id, input);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('service-entries/:id/take-back')
  @ApiOperation({ summary: 'Take an entry back: it stays, with another that names it.' })
  @ApiCreatedResponse({ type: ServiceEntryDto })
  takeBack(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: TakeBackInputDto,
  ): Promise<ServiceEntryDto> {
    return this.service.takeBack(scope, id, input.note);
  }
}
