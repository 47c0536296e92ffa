import type { Computation } from '../../platform/compute/compute-thread.js';
import { computed, type Computed } from './computed.js';
import { dropTestAnswer } from './drop-test.js';
import type { DropTestAnswerDto, DropTestAskDto } from './drop-test.dto.js';
import { gridAnswer } from './grid.js';
import type { GridAnswerDto, GridAskDto } from './grid.dto.js';
import { volumeAnswer, type IdentifiedUnit } from './identify-volume.js';
import type { VolumeAnswerDto, VolumeAskDto } from './identify-volume.dto.js';
import type { QuestionEnd } from './question-end.js';
import { spacerTradeAnswer } from './spacer-trade.js';
import type { SpacerTradeAnswerDto, SpacerTradeAskDto } from './spacer-trade.dto.js';

/** A question about an end of a bike. */
interface EndQuestion<Ask> {
  readonly end: QuestionEnd;
  readonly ask: Ask;
}

/** @public The computing thread finds it by its name. */
export const computeGrid = ({ end, ask }: EndQuestion<GridAskDto>): Computed<GridAnswerDto> =>
  computed(() => gridAnswer(end, ask));

/** @public The computing thread finds it by its name. */
export const computeTrade = ({ end, ask }: EndQuestion<SpacerTradeAskDto>): Computed<SpacerTradeAnswerDto> =>
  computed(() => spacerTradeAnswer(end, ask));

/** @public The computing thread finds it by its name. */
export const computeDropTest = ({ end, ask }: EndQuestion<DropTestAskDto>): Computed<DropTestAnswerDto> =>
  computed(() => dropTestAnswer(end, ask));

/** @public The computing thread finds it by its name. */
export const computeVolume = ({
  unit,
  ask,
}: {
  readonly unit: IdentifiedUnit;
  readonly ask: VolumeAskDto;
}): Computed<VolumeAnswerDto> => computed(() => volumeAnswer(unit, ask));

const inThread = <Input, Output>(run: (input: Input) => Output): Computation<Input, Output> => ({
  module: new URL(import.meta.url),
  name: run.name,
});

export const GRID = inThread(computeGrid);
export const TRADE = inThread(computeTrade);
export const DROP_TEST = inThread(computeDropTest);
export const VOLUME = inThread(computeVolume);
