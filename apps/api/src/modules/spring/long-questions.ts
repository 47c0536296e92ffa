import { Injectable } from '@nestjs/common';
import { ComputeThread } from '../../platform/compute/compute-thread.js';
import { answerOrRefuse } from './computed.js';
import type { DropTestAnswerDto, DropTestAskDto } from './drop-test.dto.js';
import type { GridAnswerDto, GridAskDto } from './grid.dto.js';
import type { VolumeAnswerDto, VolumeAskDto } from './identify-volume.dto.js';
import type { IdentifiedUnit } from './identify-volume.js';
import { DROP_TEST, GRID, TRADE, VOLUME } from './long-computations.js';
import type { QuestionEnd } from './question-end.js';
import type { SpacerTradeAnswerDto, SpacerTradeAskDto } from './spacer-trade.dto.js';

/** The questions whose answers take so long that others would have to wait: asked in the computing thread. */
@Injectable()
export class LongQuestions {
  constructor(private readonly computeThread: ComputeThread) {}

  async grid(end: QuestionEnd, ask: GridAskDto): Promise<GridAnswerDto> {
    return answerOrRefuse(await this.computeThread.run(GRID, { end, ask }));
  }

  async spacerTrade(end: QuestionEnd, ask: SpacerTradeAskDto): Promise<SpacerTradeAnswerDto> {
    return answerOrRefuse(await this.computeThread.run(TRADE, { end, ask }));
  }

  async dropTest(end: QuestionEnd, ask: DropTestAskDto): Promise<DropTestAnswerDto> {
    return answerOrRefuse(await this.computeThread.run(DROP_TEST, { end, ask }));
  }

  async volume(unit: IdentifiedUnit, ask: VolumeAskDto): Promise<VolumeAnswerDto> {
    return answerOrRefuse(await this.computeThread.run(VOLUME, { unit, ask }));
  }
}
