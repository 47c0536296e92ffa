import { spacerTrade, type Scene, type SpacerTrade, type TradeTarget } from '@loamledger/spring';
import { psiFromGaugePascal } from '@loamledger/units';
import {
  aboutAnswer,
  askEngine,
  filledWith,
  NO_UNIT,
  PRESSURE_UNIT,
  type QuestionEnd,
} from './question-end.js';
import type { SpacerTradeAnswerDto, SpacerTradeAskDto, TradeTargetDto } from './spacer-trade.dto.js';
import { uncertaintyOf } from './uncertainty.js';
import type { UncertaintyDto } from './uncertainty.dto.js';

/** Pressures that keep peak travel, mid-stroke support or sag with another count of spacers, side by side. */
export function spacerTradeAnswer(end: QuestionEnd, ask: SpacerTradeAskDto): SpacerTradeAnswerDto {
  const { scene } = askEngine({}, () => filledWith(end, ask.fill));
  return askEngine({ 'fill.spacers': { field: 'spacers', ...NO_UNIT } }, () => {
    const trade = remembered((moved: Scene) =>
      spacerTrade(moved.unit, moved.fill, moved.end, ask.spacers, ask.heightM),
    );
    const answer = (name: keyof SpacerTrade, found: TradeTarget) =>
      targetAnswer(
        found,
        uncertaintyOf(end, scene, PRESSURE_UNIT.fromSi, (moved) => changeOf(trade(moved)[name])),
      );
    const found = trade(scene);
    return {
      peakTravel: answer('peakTravel', found.peakTravel),
      midStroke: answer('midStroke', found.midStroke),
      sag: answer('sag', found.sag),
      why: whyTheyDiffer(found, ask.spacers - ask.fill.spacers),
      ...aboutAnswer(end),
    };
  });
}

/** The three answers come of one trade: what was computed for a scene is kept for the next one asked. */
function remembered(trade: (scene: Scene) => SpacerTrade): (scene: Scene) => SpacerTrade {
  const known = new Map<string, SpacerTrade>();
  return (scene) => {
    const key = JSON.stringify([scene.unit, scene.fill, scene.end.sprungMass]);
    const found = known.get(key) ?? trade(scene);
    known.set(key, found);
    return found;
  };
}

const changeOf = (found: TradeTarget): number | undefined =>
  found.status === 'found' ? found.change : undefined;

const targetAnswer = (found: TradeTarget, uncertainty: UncertaintyDto | null): TradeTargetDto =>
  found.status === 'found'
    ? {
        status: found.status,
        message: '',
        pressurePsi: psiFromGaugePascal(found.gaugePressure),
        changePsi: PRESSURE_UNIT.fromSi(found.change),
        uncertainty,
      }
    : { status: found.status, message: found.message, pressurePsi: null, changePsi: null, uncertainty: null };

/** One sentence on why the three pressures differ, with their figures where there are some. */
function whyTheyDiffer(trade: SpacerTrade, added: number): string {
  if (added === 0) return 'The count of spacers stays, so every property keeps its pressure.';
  const effect =
    added > 0
      ? 'More spacers raise the force little early in the stroke and much late'
      : 'Fewer spacers lower the force little early in the stroke and much late';
  const changes = (
    [
      ['near-full travel', trade.peakTravel],
      ['mid-stroke support', trade.midStroke],
      ['sag', trade.sag],
    ] as const
  ).flatMap(([name, found]) =>
    found.status === 'found' ? [`${signed(PRESSURE_UNIT.fromSi(found.change))} psi for ${name}`] : [],
  );
  const figures = changes.length === 0 ? '' : ` (${changes.join(', ')})`;
  return `${effect}, so the later in the stroke a property is to be kept, the more the pressure must change${figures}.`;
}

const signed = (psi: number): string => `${psi < 0 ? '−' : '+'}${Math.abs(psi).toFixed(1)}`;
