import {
  airSpring,
  braking,
  sag,
  type BrakingCase,
  type BrakingResult,
  type Scene,
} from '@loamledger/spring';
import {
  degreesFromRadian,
  metresFromMillimetres,
  millimetresFromMetres,
  radian,
  radianFromDegrees,
} from '@loamledger/units';
import { InvalidField } from '../../platform/errors/refusal.js';
import type { EngineFields } from '../spring-units/engine-refusal.js';
import type { BrakingAnswerDto, BrakingAskDto } from './braking.dto.js';
import type { BrakingFiguresDto } from './braking-figures.dto.js';
import {
  aboutAnswer,
  ANGLE_UNIT,
  askEngine,
  filledWith,
  LENGTH_UNIT,
  NO_UNIT,
  type QuestionEnd,
} from './question-end.js';
import { uncertaintyOf } from './uncertainty.js';

const PER_CENT = 100;
const ALL_BY_THE_FRONT_PCT = 100;
/** The head angle of a frame is given with the fork at full extension. */
const AT_FULL_EXTENSION = 0;

const BRAKING_FIELDS: EngineFields = {
  totalMass: { field: 'bike.totalMassKg', ...NO_UNIT, unit: 'kg' },
  wheelbase: { field: 'bike.wheelbaseMm', ...LENGTH_UNIT },
  centreHeight: { field: 'bike.centreOfMassHeightMm', ...LENGTH_UNIT },
  centreToRear: { field: 'bike.centreOfMassToRearMm', ...LENGTH_UNIT },
  frontUnsprungMass: { field: 'bike.frontUnsprungMassKg', ...NO_UNIT, unit: 'kg' },
  frontBrakeShare: { field: 'frontBrakeSharePct', unit: '%', fromSi: (share) => PER_CENT * share },
  slope: { field: 'slopeDeg', ...ANGLE_UNIT },
  deceleration: { field: 'decelerationMPerS2', ...NO_UNIT, unit: 'm/s²' },
};

/** Travel and head angle while braking steadily on a slope. @throws InvalidField for a shock. */
export function brakingAnswer(
  end: QuestionEnd,
  bike: BrakingFiguresDto,
  ask: BrakingAskDto,
): BrakingAnswerDto {
  const { leverage } = end;
  if (!('headAngle' in leverage)) {
    throw new InvalidField('spring.no-fork', 'end.unit.kind', end.unit.kind, "'fork': only a fork dives");
  }
  const assumedShare = ask.frontBrakeSharePct === undefined ? ['frontBrakeSharePct'] : [];
  return askEngine(BRAKING_FIELDS, () => {
    const { spring, scene } = filledWith(end, ask.fill);
    const input = brakingCase(bike, ask, leverage.headAngle);
    const result = braking(spring, input);
    const level = sag(spring, scene.end);
    const travel = (moved: Scene) => {
      const mass = (input.totalMass * moved.end.sprungMass) / scene.end.sprungMass;
      const here = braking(airSpring(moved.unit, moved.fill), { ...input, totalMass: mass });
      return here.status === 'settled' ? here.travel : undefined;
    };
    return {
      ...settledPart(result, level.status === 'settled' ? level.travel : null),
      frontLoadN: result.frontLoad,
      rearLoadN: result.rearLoad,
      liftDecelerationMPerS2: result.liftDeceleration,
      uncertainty: uncertaintyOf(end, scene, millimetresFromMetres, travel),
      ...aboutAnswer({ assumed: [...end.assumed, ...assumedShare] }),
    };
  });
}

const brakingCase = (bike: BrakingFiguresDto, ask: BrakingAskDto, headAngle: number): BrakingCase => ({
  totalMass: bike.totalMassKg,
  wheelbase: metresFromMillimetres(bike.wheelbaseMm),
  centreHeight: metresFromMillimetres(bike.centreOfMassHeightMm),
  centreToRear: metresFromMillimetres(bike.centreOfMassToRearMm),
  frontUnsprungMass: bike.frontUnsprungMassKg,
  frontBrakeShare: (ask.frontBrakeSharePct ?? ALL_BY_THE_FRONT_PCT) / PER_CENT,
  headAngle: radian(headAngle),
  referenceTravel: AT_FULL_EXTENSION,
  slope: radianFromDegrees(ask.slopeDeg),
  deceleration: ask.decelerationMPerS2,
});

function settledPart(
  result: BrakingResult,
  sagTravel: number | null,
): Pick<BrakingAnswerDto, 'status' | 'message' | 'travelMm' | 'diveMm' | 'headAngleDeg' | 'axialLoadN'> {
  if ('message' in result) {
    const { status, message } = result;
    return { status, message, travelMm: null, diveMm: null, headAngleDeg: null, axialLoadN: null };
  }
  return {
    status: result.status,
    message: '',
    travelMm: millimetresFromMetres(result.travel),
    diveMm: sagTravel === null ? null : millimetresFromMetres(result.travel - sagTravel),
    headAngleDeg: degreesFromRadian(result.headAngle),
    axialLoadN: result.axialLoad,
  };
}
