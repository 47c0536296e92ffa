import { Body, Controller, HttpCode, HttpStatus, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { AnyAccount, TokenScope } from '../../platform/http/access.js';
import { DropTestAnswerDto, DropTestQuestionDto } from './drop-test.dto.js';
import { GridAnswerDto, GridQuestionDto } from './grid.dto.js';
import { NegativeVolumeAnswerDto, NegativeVolumeQuestionDto } from './identify-negative-volume.dto.js';
import { negativeVolumeAnswer } from './identify-negative-volume.js';
import { VolumeAnswerDto, VolumeQuestionDto } from './identify-volume.dto.js';
import { LongQuestions } from './long-questions.js';
import { questionEndOf } from './question-end.js';
import { SpacerTradeAnswerDto, SpacerTradeQuestionDto } from './spacer-trade.dto.js';
import { equalisedUnitOf, identifiedUnitOf } from './workshop-unit.js';

const OK = HttpStatus.OK;

/** Questions that take many landings, and what is found out in the workshop: a unit's volumes, and what a drop puts into the spring. */
@ApiTags('spring')
@Controller('spring')
export class LongSpringController {
  constructor(private readonly long: LongQuestions) {}

  @AnyAccount()
  @TokenScope('read')
  @Post('grid')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Sag, fullest hit and travels for every spacer count with every pressure.' })
  @ApiOkResponse({ type: GridAnswerDto })
  grid(@Body() question: GridQuestionDto): Promise<GridAnswerDto> {
    return this.long.grid(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('spacer-trade')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'Pressures that keep peak travel, mid-stroke support or sag with another count of spacers.',
  })
  @ApiOkResponse({ type: SpacerTradeAnswerDto })
  spacerTrade(@Body() question: SpacerTradeQuestionDto): Promise<SpacerTradeAnswerDto> {
    return this.long.spacerTrade(questionEndOf(question.end), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('identify-volume')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Volume of a positive chamber from pressures read at two travels or more.' })
  @ApiOkResponse({ type: VolumeAnswerDto })
  identifyVolume(@Body() question: VolumeQuestionDto): Promise<VolumeAnswerDto> {
    return this.long.volume(identifiedUnitOf(question), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('identify-negative-volume')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Volume of a negative chamber from the drop of pressure when it fills.' })
  @ApiOkResponse({ type: NegativeVolumeAnswerDto })
  identifyNegativeVolume(@Body() question: NegativeVolumeQuestionDto): NegativeVolumeAnswerDto {
    return negativeVolumeAnswer(equalisedUnitOf(question), question);
  }

  @AnyAccount()
  @TokenScope('read')
  @Post('drop-test')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'What part of a measured drop goes into the spring, and what the landings are worth.',
  })
  @ApiOkResponse({ type: DropTestAnswerDto })
  dropTest(@Body() question: DropTestQuestionDto): Promise<DropTestAnswerDto> {
    return this.long.dropTest(questionEndOf(question.end), question);
  }
}
