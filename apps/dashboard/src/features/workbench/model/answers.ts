import {
  airSpring,
  bottomingHeight,
  sag,
  springForce,
  travelForHeight,
  type AirSpring,
  type HeightResult,
  type Scene,
} from '@loamledger/spring';
import { degreesFromRadian, millimetresFromMetres } from '@loamledger/units';
import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';
import { referenceBraking } from './reference-braking.js';
import { riskAbove } from './risk.js';

/** What the workbench tells of a set-up, in the order in which it is read; the unit stands in the name. */
export const FIGURES = [
  'sagPct',
  'sagMm',
  'medianHitMm',
  'highHitMm',
  'reserveMm',
  'riskPct',
  'fullestHitM',
  'brakingMm',
  'headAngleDeg',
  'progression',
] as const;

export type Figure = (typeof FIGURES)[number];

/** What a figure alone does not say. */
export type Remark =
  | 'topped out'
  | 'bottomed at rest'
  | 'median hit bottoms'
  | 'high hit bottoms'
  | 'takes any hit'
  | 'rear wheel lifts'
  | 'braking bottoms'
  | 'not converged';

export interface Answers {
  /** Null where there is none: no track, no fork, or the remarks say why. */
  readonly figures: Readonly<Record<Figure, number | null>>;
  readonly remarks: readonly Remark[];
}

/** What the answers are about, beyond the scene: the track's hits and the bike under braking. */
export interface Question {
  readonly forecast: BikeEnd['forecast'];
  readonly riskCurve: BikeEnd['riskCurve'];
  /** Degrees; null for a shock, of which no braking is asked. */
  readonly headAngleDeg: number | null;
  readonly braking: BikeEnds['braking'];
}

const PER_CENT = 100;
/** The library's own measure of progression: force deep in the stroke over force in the middle, settled. */
const DEEP = 0.95;
const MIDDLE = 0.5;

/** Everything the workbench tells of one set-up. @throws SpringInputError for what cannot be. */
export function answersFor(scene: Scene, question: Question): Answers {
  const spring = airSpring(scene.unit, scene.fill);
  const parts = [
    restAnswers(spring, scene),
    trackAnswers(spring, scene, question),
    brakingAnswers(spring, question),
  ];
  const figures = Object.assign({}, NOTHING, ...parts.map((part) => part.figures)) as Answers['figures'];
  return { figures, remarks: parts.flatMap(({ remarks }) => remarks) };
}

interface Part {
  readonly figures: Partial<Record<Figure, number | null>>;
  readonly remarks: readonly Remark[];
}

const NOTHING = Object.fromEntries(FIGURES.map((figure) => [figure, null]));

const REST_REMARKS = {
  settled: [],
  'topped-out': ['topped out'],
  bottomed: ['bottomed at rest'],
  'not-converged': ['not converged'],
} as const;

function restAnswers(spring: AirSpring, { end }: Scene): Part {
  const { status, fraction, travel } = sag(spring, end);
  const known = status !== 'not-converged';
  return {
    figures: {
      sagPct: known ? fraction * PER_CENT : null,
      sagMm: known ? millimetresFromMetres(travel) : null,
      progression: springForce(spring, DEEP * spring.stroke) / springForce(spring, MIDDLE * spring.stroke),
    },
    remarks: REST_REMARKS[status],
  };
}

function trackAnswers(spring: AirSpring, { end }: Scene, { forecast, riskCurve }: Question): Part {
  const fullest = bottomingHeight(spring, end);
  const heightM = passingHeight(fullest);
  const fullestHitM = fullest.status === 'found' ? fullest.height : null;
  const remarks: Remark[] = [
    ...(fullest.status === 'beyond-range' ? ['takes any hit' as const] : []),
    ...(fullest.status === 'not-converged' ? ['not converged' as const] : []),
  ];
  if (forecast === null) return { figures: { fullestHitM }, remarks };
  const median = travelForHeight(spring, end, forecast.medianM);
  const high = travelForHeight(spring, end, forecast.p95M);
  if (median.status === 'bottomed') remarks.push('median hit bottoms');
  else if (high.status === 'bottomed') remarks.push('high hit bottoms');
  if (median.status === 'not-converged' || high.status === 'not-converged') remarks.push('not converged');
  const highHitMm = high.status === 'not-converged' ? null : millimetresFromMetres(high.travel);
  return {
    figures: {
      fullestHitM,
      medianHitMm: median.status === 'not-converged' ? null : millimetresFromMetres(median.travel),
      highHitMm,
      reserveMm: highHitMm === null ? null : millimetresFromMetres(spring.stroke) - highHitMm,
      riskPct: heightM === null ? null : riskAbove(riskCurve, heightM),
    },
    remarks,
  };
}

/** The height above which a hit bottoms, m: 0 where every hit does; null where it could not be computed. */
function passingHeight(fullest: HeightResult): number | null {
  switch (fullest.status) {
    case 'found':
      return fullest.height;
    case 'below-sudden-load':
      return 0;
    case 'beyond-range':
      return Infinity;
    case 'not-converged':
      return null;
  }
}

function brakingAnswers(spring: AirSpring, { headAngleDeg, braking }: Question): Part {
  if (headAngleDeg === null) return { figures: {}, remarks: [] };
  const result = referenceBraking(spring, headAngleDeg, braking);
  if ('message' in result) {
    return {
      figures: {},
      remarks: [result.status === 'rear-wheel-lifts' ? 'rear wheel lifts' : 'not converged'],
    };
  }
  return {
    figures: {
      brakingMm: millimetresFromMetres(result.travel),
      headAngleDeg: degreesFromRadian(result.headAngle),
    },
    remarks: result.status === 'bottomed' ? ['braking bottoms'] : [],
  };
}
