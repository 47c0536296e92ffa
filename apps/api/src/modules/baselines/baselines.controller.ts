import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { SetupDto } from '../setups/setups.dto.js';
import {
  BaselineDto,
  BaselineListDto,
  BaselineListQuery,
  BaselineRunsDto,
  TakeBaselineDto,
  TakenDto,
  TakeSeveralDto,
} from './baselines.dto.js';
import { BaselinesService } from './baselines.service.js';
import { TakeBaseline } from './take-baseline.js';

@ApiTags('baselines')
@Controller('teams/:teamId/baselines')
export class BaselinesController {
  constructor(
    private readonly baselines: BaselinesService,
    private readonly takeBaseline: TakeBaseline,
  ) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get()
  @ApiOperation({ summary: "Baselines of a track for every bike, from the team's runs as they are now." })
  @ApiOkResponse({ type: BaselineListDto })
  list(@Scope() scope: TeamScope, @Query() query: BaselineListQuery): Promise<BaselineListDto> {
    return this.baselines.list(scope, query);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':id')
  @ApiOperation({ summary: 'A baseline as it was offered.' })
  @ApiOkResponse({ type: BaselineDto })
  get(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<BaselineDto> {
    return this.baselines.get(scope, id);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get(':id/runs')
  @ApiOperation({ summary: 'The runs behind a baseline.' })
  @ApiOkResponse({ type: BaselineRunsDto })
  runs(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<BaselineRunsDto> {
    return this.baselines.runs(scope, id);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('change-set-ups')
  @Post('take')
  @ApiOperation({
    summary: 'Take the baselines of several bikes, or their first steps: all of them, or none.',
  })
  @ApiCreatedResponse({ type: TakenDto })
  takeSeveral(@Scope() scope: TeamScope, @Body() input: TakeSeveralDto): Promise<TakenDto> {
    return this.takeBaseline.takeSeveral(scope, input);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('change-set-ups')
  @Post(':id/take')
  @ApiOperation({
    summary: "Take a baseline, or its first step: makes the bike's next set-up and a decision record.",
  })
  @ApiCreatedResponse({ type: SetupDto })
  take(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: TakeBaselineDto,
  ): Promise<SetupDto> {
    return this.takeBaseline.take(scope, id, input);
  }
}
