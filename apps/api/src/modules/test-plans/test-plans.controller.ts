import { Body, Controller, Get, HttpCode, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { PlanPreviewDto, PlanPreviewInputDto } from './plan-preview.dto.js';
import { PlanRunsService } from './plan-runs.service.js';
import { PlanProgressDto, PlanStepDto } from './planned-run.dto.js';
import {
  AttachInputDto,
  ClosingInputDto,
  PlanRunInputDto,
  PlanVoidInputDto,
  ReplanInputDto,
  TestPlanInputDto,
} from './test-plan-input.dto.js';
import {
  TestPlanDto,
  TestPlanListQuery,
  TestPlanPageDto,
  type TestPlanSummaryDto,
} from './test-plans.dto.js';
import { TestPlansService } from './test-plans.service.js';

@ApiTags('test plans')
@Controller('teams/:teamId/test-plans')
export class TestPlansController {
  constructor(
    private readonly plans: TestPlansService,
    private readonly planRuns: PlanRunsService,
  ) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: 'Test plans, newest first; a rider sees those that they ride in.' })
  @ApiOkResponse({ type: TestPlanPageDto })
  list(@Scope() scope: TeamScope, @Query() query: TestPlanListQuery): Promise<Page<TestPlanSummaryDto>> {
    return this.plans.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({
    summary: 'A test plan with its order; letters only for a rider while it is blind and open.',
  })
  @ApiOkResponse({ type: TestPlanDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<TestPlanDto> {
    return this.plans.get(scope, id);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Post()
  @ApiOperation({ summary: 'Make a test plan: its order, and what it can tell before anyone rides.' })
  @ApiCreatedResponse({ type: TestPlanDto })
  create(@Scope() scope: TeamScope, @Body() input: TestPlanInputDto): Promise<TestPlanDto> {
    return this.plans.create(scope, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Post('preview')
  @HttpCode(200)
  @ApiOperation({ summary: 'Say what a plan of this size could tell; stores nothing.' })
  @ApiOkResponse({ type: PlanPreviewDto })
  preview(@Scope() scope: TeamScope, @Body() input: PlanPreviewInputDto): Promise<PlanPreviewDto> {
    return this.plans.preview(scope, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('edit-records')
  @Put(':id/closing')
  @ApiOperation({
    summary: 'Close a test plan; send the ETag as If-Match. Riders then see what the letters were.',
  })
  @ApiOkResponse({ type: TestPlanDto })
  close(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() input: ClosingInputDto,
  ): Promise<TestPlanDto> {
    return this.plans.close(scope, id, version, input.note ?? '');
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id/progress')
  @ApiOperation({ summary: 'The next run of each rider; a rider sees their own.' })
  @ApiOkResponse({ type: PlanProgressDto, isArray: true })
  progress(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<PlanProgressDto[]> {
    return this.planRuns.progress(scope, id);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post(':id/runs')
  @ApiOperation({ summary: "Log a rider's next run of the plan; a spoilt one has the rest ordered anew." })
  @ApiCreatedResponse({ type: PlanStepDto })
  log(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: PlanRunInputDto,
  ): Promise<PlanStepDto> {
    return this.planRuns.log(scope, id, input);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post(':id/attached-runs')
  @ApiOperation({ summary: 'Attach a run that is logged already.' })
  @ApiCreatedResponse({ type: PlanStepDto })
  attach(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: AttachInputDto,
  ): Promise<PlanStepDto> {
    return this.planRuns.attach(scope, id, input.runId);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post(':id/void-runs')
  @ApiOperation({ summary: 'Void a run of the plan; what its rider has still to ride is ordered anew.' })
  @ApiCreatedResponse({ type: PlanStepDto })
  voidRun(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: PlanVoidInputDto,
  ): Promise<PlanStepDto> {
    return this.planRuns.voidRun(scope, id, input);
  }

  @Roles(...ROLES)
  @TokenScope('log-runs')
  @Post(':id/rest')
  @HttpCode(200)
  @ApiOperation({
    summary: 'Order anew what a rider has still to ride, if a run was voided or restored elsewhere.',
  })
  @ApiOkResponse({ type: PlanStepDto })
  replan(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: ReplanInputDto,
  ): Promise<PlanStepDto> {
    return this.planRuns.replan(scope, id, input.riderId);
  }
}
