import {
  airSpring,
  bottomingHeight,
  hitHeight,
  landing,
  travelForHeight,
  type Scene,
} from '@loamledger/spring';
import { gaugePascalFromPsi, metresFromMillimetres, millimetresFromMetres } from '@loamledger/units';
import type {
  FullestHitAnswerDto,
  FullestHitAskDto,
  HitHeightAnswerDto,
  HitHeightAskDto,
  LandingAnswerDto,
  LandingAskDto,
} from './hits.dto.js';
import {
  aboutAnswer,
  askEngine,
  filledWith,
  LENGTH_UNIT,
  NO_UNIT,
  type QuestionEnd,
} from './question-end.js';
import { uncertaintyOf } from './uncertainty.js';

const PER_CENT = 100;
const MILLISECONDS = 1_000;

/** Landing from a drop to flat. */
export function landingAnswer(end: QuestionEnd, ask: LandingAskDto): LandingAnswerDto {
  return askEngine({}, () => {
    const { spring, scene } = filledWith(end, ask.fill);
    const hit = landing(spring, scene.end, ask.heightM);
    const travelUsed = (moved: Scene) => {
      const used = travelForHeight(airSpring(moved.unit, moved.fill), moved.end, ask.heightM);
      return used.status === 'peak' ? used.travel : undefined;
    };
    return {
      status: hit.status,
      message: hit.message,
      travelMm: millimetresFromMetres(hit.peakTravel),
      travelPct: (PER_CENT * hit.peakTravel) / spring.stroke,
      reserveMm: millimetresFromMetres(spring.stroke - hit.peakTravel),
      wheelTravelMm: millimetresFromMetres(scene.end.leverage.wheelTravel(hit.peakTravel)),
      timeMs: MILLISECONDS * hit.peakTime,
      peakForceN: hit.peakForce,
      energy: {
        inputJ: hit.energyBalance.input,
        gasJ: hit.energyBalance.gas,
        damperJ: hit.energyBalance.damper,
        bumperJ: hit.energyBalance.bumper,
        frictionJ: hit.energyBalance.friction,
        leftOverJ: hit.leftOverEnergy,
        residualJ: hit.energyBalance.residual,
      },
      steps: hit.steps,
      evaluations: hit.evaluations,
      uncertainty: uncertaintyOf(end, scene, millimetresFromMetres, travelUsed),
      ...aboutAnswer(end),
    };
  });
}

/** Hit height behind a ring reading. Its interval counts ring, gauge and mass. */
export function hitHeightAnswer(end: QuestionEnd, ask: HitHeightAskDto): HitHeightAnswerDto {
  const fields = {
    travelUsed: { field: 'travelUsedMm', ...LENGTH_UNIT },
    readingSd: { field: 'end.uncertainty.readingMm', ...LENGTH_UNIT },
  };
  return askEngine(fields, () => {
    const { spring, scene } = filledWith(end, ask.fill);
    const { uncertainty } = end;
    const reading = {
      travelUsed: metresFromMillimetres(ask.travelUsedMm),
      readingSd: metresFromMillimetres(uncertainty.readingMm),
    };
    const found = hitHeight(spring, scene.end, reading, {
      gaugeSd: gaugePascalFromPsi(uncertainty.pressurePsi),
      massSd: (uncertainty.sprungMassPct / PER_CENT) * end.sprungMass,
    });
    const about = { landings: found.landings, ...aboutAnswer(end) };
    if (found.status === 'not-solved') {
      const { status, message } = found;
      return {
        status,
        message,
        kind: null,
        heightM: null,
        lowerM: null,
        upperM: null,
        logSd: null,
        ...about,
      };
    }
    return {
      status: found.status,
      message: '',
      kind: found.kind,
      heightM: found.height,
      lowerM: found.lower,
      upperM: found.upper,
      logSd: found.logSd,
      ...about,
    };
  });
}

/** The drop that just bottoms out. */
export function fullestHitAnswer(end: QuestionEnd, ask: FullestHitAskDto): FullestHitAnswerDto {
  return askEngine({}, () => {
    const { spring, scene } = filledWith(end, ask.fill);
    const found = bottomingHeight(spring, scene.end);
    const height = (moved: Scene) => {
      const here = bottomingHeight(airSpring(moved.unit, moved.fill), moved.end);
      return here.status === 'found' ? here.height : undefined;
    };
    return {
      status: found.status,
      heightM: found.status === 'found' ? found.height : null,
      landings: found.landings,
      uncertainty: uncertaintyOf(end, scene, NO_UNIT.fromSi, height),
      ...aboutAnswer(end),
    };
  });
}
