import { Body, Controller, HttpCode, HttpStatus, Param, Post, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { CurvesAnswerDto, CurvesAskDto } from '../spring/curves.dto.js';
import { curvesAnswer } from '../spring/curves.js';
import { PressureForSagAnswerDto, PressureForSagAskDto, SagAnswerDto, SagAskDto } from '../spring/sag.dto.js';
import { sagAnswer, pressureForSagAnswer } from '../spring/sag.js';
import {
  FullestHitAnswerDto,
  FullestHitAskDto,
  HitHeightAnswerDto,
  HitHeightAskDto,
  LandingAnswerDto,
  LandingAskDto,
} from '../spring/hits.dto.js';
import { landingAnswer, hitHeightAnswer, fullestHitAnswer } from '../spring/hits.js';
import { BrakingAnswerDto, BrakingAskDto } from '../spring/braking.dto.js';
import { brakingAnswer } from '../spring/braking.js';
import { VenueAnswerDto, VenueAskDto } from '../spring/venue.dto.js';
import { venueAnswer } from '../spring/venue.js';
import { ReboundStepAnswerDto, ReboundStepAskDto } from '../spring/rebound-step.dto.js';
import { reboundStepAnswer } from '../spring/rebound-step.js';
import { BikeEndPath } from './bike-end-path.js';
import { BikeQuestions } from './bike-questions.js';
import { EndsQuery } from './ends.dto.js';

const OK = HttpStatus.OK;

/** The engine's questions about an end of a stored bike, which tells unit, mass, leverage and air. */
@ApiTags('workbench')
@Controller('teams/:teamId/bikes/:bikeId/ends/:end/spring')
export class BikeSpringController {
  constructor(private readonly bikes: BikeQuestions) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('curves')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'Force, stiffness and pressure over travel, settled and fast, with progression and energy.',
  })
  @ApiOkResponse({ type: CurvesAnswerDto })
  curves(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: CurvesAskDto,
  ): Promise<CurvesAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => curvesAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('sag')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Sag under the rider standing still.' })
  @ApiOkResponse({ type: SagAnswerDto })
  sag(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: SagAskDto,
  ): Promise<SagAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => sagAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('pressure-for-sag')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Pressure for a wanted sag.' })
  @ApiOkResponse({ type: PressureForSagAnswerDto })
  pressureForSag(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: PressureForSagAskDto,
  ): Promise<PressureForSagAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => pressureForSagAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('landing')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Landing from a drop to flat: travel used, force, time and energies.' })
  @ApiOkResponse({ type: LandingAnswerDto })
  landing(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: LandingAskDto,
  ): Promise<LandingAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => landingAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('hit-height')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Hit height behind a ring reading.' })
  @ApiOkResponse({ type: HitHeightAnswerDto })
  hitHeight(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: HitHeightAskDto,
  ): Promise<HitHeightAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => hitHeightAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('fullest-hit')
  @HttpCode(OK)
  @ApiOperation({ summary: 'The drop that just bottoms out.' })
  @ApiOkResponse({ type: FullestHitAnswerDto })
  fullestHit(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: FullestHitAskDto,
  ): Promise<FullestHitAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => fullestHitAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('braking')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'Dive and head angle while braking steadily on a slope, and whether the rear wheel lifts.',
  })
  @ApiOkResponse({ type: BrakingAnswerDto })
  braking(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: BrakingAskDto,
  ): Promise<BrakingAnswerDto> {
    return this.bikes.askWithBike(scope, path, query, (end, bike) => brakingAnswer(end, bike, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('venue-pressure')
  @HttpCode(OK)
  @ApiOperation({ summary: 'What to pump to in other air.' })
  @ApiOkResponse({ type: VenueAnswerDto })
  venuePressure(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: VenueAskDto,
  ): Promise<VenueAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => venueAnswer(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('rebound-step')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Which way to look for rebound after the spring has changed.' })
  @ApiOkResponse({ type: ReboundStepAnswerDto })
  reboundStep(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: ReboundStepAskDto,
  ): Promise<ReboundStepAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => reboundStepAnswer(end, ask));
  }
}
