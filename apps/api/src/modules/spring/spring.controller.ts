import { Body, Controller, HttpCode, HttpStatus, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { AnyAccount, TokenScope } from '../../platform/http/access.js';
import { CurvesAnswerDto, CurvesQuestionDto } from './curves.dto.js';
import { curvesAnswer } from './curves.js';
import {
  PressureForSagAnswerDto,
  PressureForSagQuestionDto,
  SagAnswerDto,
  SagQuestionDto,
} from './sag.dto.js';
import { sagAnswer, pressureForSagAnswer } from './sag.js';
import {
  FullestHitAnswerDto,
  FullestHitQuestionDto,
  HitHeightAnswerDto,
  HitHeightQuestionDto,
  LandingAnswerDto,
  LandingQuestionDto,
} from './hits.dto.js';
import { landingAnswer, hitHeightAnswer, fullestHitAnswer } from './hits.js';
import { BrakingAnswerDto, BrakingQuestionDto } from './braking.dto.js';
import { brakingAnswer } from './braking.js';
import { VenueAnswerDto, VenueQuestionDto } from './venue.dto.js';
import { venueAnswer } from './venue.js';
import { ReboundStepAnswerDto, ReboundStepQuestionDto } from './rebound-step.dto.js';
import { reboundStepAnswer } from './rebound-step.js';
import { questionEndOf } from './question-end.js';

const OK = HttpStatus.OK;

/** The engine's questions about an end that is told along with the question. Nothing is stored. */
@ApiTags('spring')
@Controller('spring')
export class SpringController {
  @AnyAccount()
  @TokenScope('read')
  @Post('curves')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'Force, stiffness and pressure over travel, settled and fast, with progression and energy.',
  })
  @ApiOkResponse({ type: CurvesAnswerDto })
  curves(@Body() question: CurvesQuestionDto): CurvesAnswerDto {
    return curvesAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('sag')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Sag under the rider standing still.' })
  @ApiOkResponse({ type: SagAnswerDto })
  sag(@Body() question: SagQuestionDto): SagAnswerDto {
    return sagAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('pressure-for-sag')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Pressure for a wanted sag.' })
  @ApiOkResponse({ type: PressureForSagAnswerDto })
  pressureForSag(@Body() question: PressureForSagQuestionDto): PressureForSagAnswerDto {
    return pressureForSagAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('landing')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Landing from a drop to flat: travel used, force, time and energies.' })
  @ApiOkResponse({ type: LandingAnswerDto })
  landing(@Body() question: LandingQuestionDto): LandingAnswerDto {
    return landingAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('hit-height')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Hit height behind a ring reading.' })
  @ApiOkResponse({ type: HitHeightAnswerDto })
  hitHeight(@Body() question: HitHeightQuestionDto): HitHeightAnswerDto {
    return hitHeightAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('fullest-hit')
  @HttpCode(OK)
  @ApiOperation({ summary: 'The drop that just bottoms out.' })
  @ApiOkResponse({ type: FullestHitAnswerDto })
  fullestHit(@Body() question: FullestHitQuestionDto): FullestHitAnswerDto {
    return fullestHitAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('braking')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'Dive and head angle while braking steadily on a slope, and whether the rear wheel lifts.',
  })
  @ApiOkResponse({ type: BrakingAnswerDto })
  braking(@Body() question: BrakingQuestionDto): BrakingAnswerDto {
    return brakingAnswer(questionEndOf(question.end), question.bike, question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('venue-pressure')
  @HttpCode(OK)
  @ApiOperation({ summary: 'What to pump to in other air.' })
  @ApiOkResponse({ type: VenueAnswerDto })
  venuePressure(@Body() question: VenueQuestionDto): VenueAnswerDto {
    return venueAnswer(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('rebound-step')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Which way to look for rebound after the spring has changed.' })
  @ApiOkResponse({ type: ReboundStepAnswerDto })
  reboundStep(@Body() question: ReboundStepQuestionDto): ReboundStepAnswerDto {
    return reboundStepAnswer(questionEndOf(question.end), question);
  }
}
