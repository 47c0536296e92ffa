import { Body, Controller, HttpCode, HttpStatus, Param, Post, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { DropTestAnswerDto, DropTestAskDto } from '../spring/drop-test.dto.js';
import { GridAnswerDto, GridAskDto } from '../spring/grid.dto.js';
import { NegativeVolumeAnswerDto, NegativeVolumeAskDto } from '../spring/identify-negative-volume.dto.js';
import { negativeVolumeAnswer } from '../spring/identify-negative-volume.js';
import { VolumeAnswerDto, VolumeAskDto } from '../spring/identify-volume.dto.js';
import { LongQuestions } from '../spring/long-questions.js';
import { SpacerTradeAnswerDto, SpacerTradeAskDto } from '../spring/spacer-trade.dto.js';
import { BikeEndPath } from './bike-end-path.js';
import { BikeQuestions } from './bike-questions.js';
import { EndsQuery } from './ends.dto.js';
import { equalisedBikeUnit, identifiedBikeUnit } from './bike-workshop-unit.js';

const OK = HttpStatus.OK;

/** Questions that take many landings, and those of the workshop, about an end of a stored bike. */
@ApiTags('workbench')
@Controller('teams/:teamId/bikes/:bikeId/ends/:end/spring')
export class BikeWorkshopController {
  constructor(
    private readonly bikes: BikeQuestions,
    private readonly long: LongQuestions,
  ) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('grid')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Sag, fullest hit and travels for every spacer count with every pressure.' })
  @ApiOkResponse({ type: GridAnswerDto })
  grid(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: GridAskDto,
  ): Promise<GridAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => this.long.grid(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('spacer-trade')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'Pressures that keep peak travel, mid-stroke support or sag with another count of spacers.',
  })
  @ApiOkResponse({ type: SpacerTradeAnswerDto })
  spacerTrade(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: SpacerTradeAskDto,
  ): Promise<SpacerTradeAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => this.long.spacerTrade(end, ask));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('identify-volume')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Volume of the positive chamber from pressures read at two travels or more.' })
  @ApiOkResponse({ type: VolumeAnswerDto })
  identifyVolume(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: VolumeAskDto,
  ): Promise<VolumeAnswerDto> {
    return this.bikes.askOfUnit(scope, path, query, (unit, end) =>
      this.long.volume(identifiedBikeUnit(unit, end), ask),
    );
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('identify-negative-volume')
  @HttpCode(OK)
  @ApiOperation({ summary: 'Volume of the negative chamber from the drop of pressure when it fills.' })
  @ApiOkResponse({ type: NegativeVolumeAnswerDto })
  identifyNegativeVolume(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: NegativeVolumeAskDto,
  ): Promise<NegativeVolumeAnswerDto> {
    return this.bikes.askOfUnit(scope, path, query, (unit, end) =>
      negativeVolumeAnswer(equalisedBikeUnit(unit, end), ask),
    );
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Post('drop-test')
  @HttpCode(OK)
  @ApiOperation({
    summary: 'What part of a measured drop goes into the spring, and what the landings are worth.',
  })
  @ApiOkResponse({ type: DropTestAnswerDto })
  dropTest(
    @Scope() scope: TeamScope,
    @Param() path: BikeEndPath,
    @Query() query: EndsQuery,
    @Body() ask: DropTestAskDto,
  ): Promise<DropTestAnswerDto> {
    return this.bikes.ask(scope, path, query, (end) => this.long.dropTest(end, ask));
  }
}
