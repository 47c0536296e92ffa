import { REFERENCE_BRAKING } from '@loamledger/spring';
import { degreesFromRadian } from '@loamledger/units';
import { formatNumber, formatShare } from '../../shared/format/numbers.js';
import type { Figure, Remark } from './model/answers.js';
import type { FillField } from './model/fill.js';
import type { Problem } from './model/proposal.js';
import { withUnit } from '../../shared/format/with-unit.js';
import { wholeFigures } from '../../shared/format/whole-figures.js';

/** The braking in which set-ups are compared, in words. */
const BRAKING = `${withUnit(String(REFERENCE_BRAKING.deceleration), 'm/s²')} on ${formatNumber(degreesFromRadian(REFERENCE_BRAKING.slope))}° downhill`;

export const texts = {
  title: (bike: string) => `Workbench: ${bike}`,
  lead: (rider: string, track: string | undefined) =>
    `${rider}${track === undefined ? '' : ` on ${track}`} · what a change does, before anything is touched`,
  toBench: 'Workbench',
  toBike: 'To the bike’s records',
  bike: 'Bike',
  track: 'Track',
  end: 'End',
  fork: 'Fork',
  shock: 'Shock',
  notSetUp: 'Not set up yet',
  notSetUpLead:
    'The workbench starts from what is in the bike now. Enter that first; the reason can be “as found”.',
  setUp: 'Set it up',
  noTracks: 'No tracks entered yet: sag, curves and braking are told; hits and risk need a track.',
  noReadings: 'The hits are those of riders in general: nobody has read a ring on this track yet.',
  air: (pressure: string, temperature: string) =>
    `In air of ${withUnit(pressure, 'hPa')} and ${temperature}.`,
  changedMeanwhileWord: 'Changed meanwhile.',
  changedMeanwhile: 'Somebody has set this bike up anew since you began; ‘now’ is what is in it since.',

  pressure: 'Pressure',
  spacers: 'Spacers',
  more: 'more',
  less: 'less',
  nowIs: (value: string) => `now ${value}`,
  backToNow: 'Back to now',
  limits: (range: string, spacers: string) => `Limits: ${range}, at most ${spacers}`,
  noLimitsWord: 'No limits entered:',
  noLimits: 'figures and curves are told, nothing is recommended. Enter the limits from the manual.',
  enterLimits: 'Enter them',

  figures: 'What it does',
  figure: 'Figure',
  now: 'Now',
  proposed: 'Proposed',
  change: 'Change',
  howSure: 'How sure?',
  rangesLead:
    'Nine times of ten within this range: from the uncertainty of gauge, mass, volumes, damping and friction, larger ' +
    'where they are assumed. A change is known better than a figure, since all of them are wrong alike before and after.',
  none: '–',
  wanted: (what: string) => `wanted ${what}, as entered`,
  accepted: (what: string) => `accepted ${what}, as entered`,
  baselineTitle: 'What the baseline wants.',
  baselineLater: 'It is looked up …',
  baselineUnknown: 'It cannot be told now; the page of the track says why.',
  baselineReserve: (left: string) => wholeFigures(`Left at the 95 % hit: ${left}.`),
  baselineSag: (band: string) => `Sag: ${band}.`,
  kept: 'What was kept',
  bigStepWord: 'A big step.',
  bigStep: (steps: string) => `Ride it in steps, one after another: ${steps}.`,
  firstStep: 'Propose only the first',
  impossibleWord: 'Cannot be computed.',
  impossible: (what: string) =>
    `The engine refuses this unit or frame as it is entered: ${what}. Correct it there.`,
  correct: 'Correct the unit',

  evidence: 'Evidence',
  beware: 'Beware.',
  lowerBoundOnly: 'This track is known only as ‘at least this hard’.',

  strokes: 'The stroke used',
  strokeNow: (fill: string) => `Stroke, now: ${fill}`,
  strokeProposed: (fill: string) => `Stroke, proposed: ${fill}`,
  curves: 'Curves',
  force: 'Force over travel',
  stiffness: 'Stiffness over travel',
  forceUnit: 'N',
  stiffnessUnit: 'N/mm',
  travelAxis: 'travel, mm',
  settled: 'Settled, at rest: what the spring holds, without damper and friction.',
  chartHint: 'Point at the picture, or step to it and use the arrow keys, to read it.',
  chartName: (title: string) => `${title}. Arrow keys step along the travel.`,
  chartTable: 'The curve as a table',

  trade: 'What a spacer trades for',
  tradeLead: (count: string, from: string) => `With ${count} instead of ${from}, pump to this to keep …`,
  keeps: { peakTravel: 'the travel of the big hit', midStroke: 'mid-stroke support', sag: 'the sag' },
  perSpacer: (pressure: string) => `${pressure} per spacer`,
  tryIt: (pressure: string) => `Try ${pressure}`,
  outsideLimits: 'outside the limits',
  whyTrade:
    'They differ because a spacer does little early in the stroke and much late: to keep what happens late, more air ' +
    'has to come out than to keep what happens early.',
  onlyOneCount: 'This unit takes no spacers.',
  rebound: 'Rebound',
  reboundWords: {
    slower: 'the spring pushes back harder: try it slower',
    faster: 'the spring pushes back less: try it faster',
    keep: 'leave it',
  },

  assumed: 'Assumed behind this',
  nothingAssumed: 'Nothing is assumed.',
  assumedOf: { 'spring unit': 'Fork or shock', bike: 'Bike', rider: 'Rider' },
  braking: `Braking is told at ${BRAKING}, ${formatShare(REFERENCE_BRAKING.frontBrakeShare)} of it by the front wheel.`,

  work: 'Work steps',
  noWork: 'Nothing is proposed yet.',
  spacersNeeded: (count: string) => `Needed: ${count}`,
  inStock: (count: number) => `${count} in stock`,
  short: 'Not enough in stock.',
  first: 'The maker’s manual, local rules and a qualified mechanic come first.',

  propose: 'Propose this change',
  proposeLead:
    'Makes the bike’s next set-up and an open decision with what the service expects of it. Both ends are saved together.',
  reason: 'Reason',
  reasonHint: 'What should get better? You will read this again when it is kept or taken back.',
  note: 'Note',
  needed: 'Needed',
  endMissing: 'One end is not set up or cannot be computed; see above.',
  somethingImpossible: 'What is proposed cannot be; see the field.',
  nothingProposed: 'Change pressure or spacers first.',
  notProposed: 'Not saved',
  saved: (revision: number) => `Saved as revision ${revision}; its decision is open.`,
  toDecision: 'See it with the bike',
  stale: 'Look at what it is set to now, and propose again.',
  lookAgain: 'Show what is in it now',
};

export const PROBLEMS: Readonly<Record<Problem, (field: FillField, unit: string, bound: string) => string>> =
  {
    'not a number': () => 'Must be a number',
    'not whole': () => 'Must be a whole number',
    'below the limit': (field, unit, bound) =>
      field === 'spacers' ? 'There are no fewer than none' : `Refused: ${unit} must not be below ${bound}`,
    'above the limit': (field, unit, bound) =>
      field === 'spacers'
        ? `Refused: ${unit} takes at most ${bound}`
        : `Refused: ${unit} must not be above ${bound}`,
    'beyond any unit': (field, _unit, bound) =>
      field === 'spacers'
        ? 'Refused: no unit takes so many'
        : `Refused: no unit is pumped to this (${bound})`,
    'chamber full': () => 'Refused: with so many, no air is left at full travel',
  };

interface FigureText {
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  /** Where a step changes less than the figure is shown with. */
  readonly changeDecimals?: number;
  readonly hint?: string;
}

export const FIGURE_TEXTS: Readonly<Record<Figure, FigureText>> = {
  sagPct: { label: 'Sag', unit: '%', decimals: 1 },
  sagMm: { label: 'Sag, travel', unit: 'mm', decimals: 0, changeDecimals: 1 },
  medianHitMm: { label: 'Median hit', unit: 'mm', decimals: 0, changeDecimals: 1 },
  highHitMm: { label: wholeFigures('95 % hit'), unit: 'mm', decimals: 0, changeDecimals: 1 },
  reserveMm: { label: wholeFigures('Left at the 95 % hit'), unit: 'mm', decimals: 0, changeDecimals: 1 },
  riskPct: { label: 'Risk of bottoming, a run', unit: '', decimals: 0, changeDecimals: 1 },
  fullestHitM: {
    label: 'Bottoms at',
    unit: 'm',
    decimals: 2,
    hint: 'the drop to flat that uses all the travel',
  },
  brakingMm: {
    label: 'Used under braking',
    unit: 'mm',
    decimals: 0,
    changeDecimals: 1,
    hint: BRAKING,
  },
  headAngleDeg: { label: 'Head angle then', unit: '°', decimals: 1 },
  progression: {
    label: 'Progression',
    unit: '',
    decimals: 2,
    hint: wholeFigures('force at 95 % over that at 50 %'),
  },
};

export const REMARK_TEXTS: Readonly<Record<Remark, string>> = {
  'topped out': 'It stands at full extension under this rider: there is no sag.',
  'bottomed at rest': 'It is all the way in under this rider at rest.',
  'median hit bottoms': 'Already the median hit of this track bottoms out.',
  'high hit bottoms': wholeFigures('The 95 % hit of this track bottoms out.'),
  'takes any hit': 'It takes any drop up to 20 m without bottoming.',
  'rear wheel lifts': 'The rear wheel lifts before this braking: no dive is told.',
  'braking bottoms': 'Under this braking it is all the way in.',
  'not converged': 'One figure could not be computed and is left out.',
};
