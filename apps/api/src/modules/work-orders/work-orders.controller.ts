import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import { TickStep } from './tick-step.js';
import {
  TickInputDto,
  WorkOrderDto,
  WorkOrderInputDto,
  WorkOrderListQuery,
  WorkOrderPageDto,
} from './work-orders.dto.js';
import { WorkOrdersService } from './work-orders.service.js';

@ApiTags('work-orders')
@Controller('teams/:teamId')
export class WorkOrdersController {
  constructor(
    private readonly orders: WorkOrdersService,
    private readonly tickStep: TickStep,
  ) {}

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get('work-orders')
  @ApiOperation({ summary: 'Work orders, newest first.' })
  @ApiOkResponse({ type: WorkOrderPageDto })
  list(@Scope() scope: TeamScope, @Query() query: WorkOrderListQuery): Promise<Page<WorkOrderDto>> {
    return this.orders.list(scope, query);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get('work-orders/:id')
  @ApiOperation({ summary: 'A work order: steps in their order, parts, and what is done.' })
  @ApiOkResponse({ type: WorkOrderDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<WorkOrderDto> {
    return this.orders.get(scope, id);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('work-orders')
  @ApiOperation({ summary: 'Make the work order that gets a bike from what is in it to a set-up.' })
  @ApiCreatedResponse({ type: WorkOrderDto })
  create(@Scope() scope: TeamScope, @Body() input: WorkOrderInputDto): Promise<WorkOrderDto> {
    return this.orders.create(scope, input.setupId);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('work-steps/:id/tick')
  @ApiOperation({ summary: 'Say that a step is done, or is not; spacers move in stock with it.' })
  @ApiCreatedResponse({ type: WorkOrderDto })
  tick(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: TickInputDto,
  ): Promise<WorkOrderDto> {
    return this.tickStep.tick(scope, id, input.isDone);
  }
}
