import {
  propagateUncertainty,
  sceneInputs,
  sceneWith,
  type Scene,
  type SceneInput,
  type UncertainInput,
} from '@loamledger/spring';
import { gaugePascalFromPsi, millimetresFromMetres } from '@loamledger/units';
import type { BikeEnd } from '../api/bike-ends.js';
import { answersFor, FIGURES, type Answers, type Figure, type Question } from './answers.js';
import { riskAbove } from './risk.js';

/** 90 % interval of a figure, in the figure's unit. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** Null where there is none. */
export type Intervals = Readonly<Record<Figure, Interval | null>>;

const PER_CENT = 100;

/** Errors of the inputs, SI; 0 is as entered. */
type Errors = Readonly<Record<SceneInput, number>>;

/** A set-up's answers were its inputs a little different, and how different they may be. */
export interface UncertainView {
  readonly inputs: readonly UncertainInput<SceneInput>[];
  readonly at: (errors: Errors) => Answers;
  readonly question: Question;
  readonly strokeMm: number;
}

/** Every figure is asked at the same few errors; each of them is computed once, when first asked. */
export function uncertainView(scene: Scene, question: Question, sds: BikeEnd['uncertainty']): UncertainView {
  const known = new Map<string, Answers>();
  return {
    inputs: uncertainInputs(scene, sds),
    question,
    strokeMm: millimetresFromMetres(scene.unit.stroke),
    at: (errors) => {
      const key = Object.values(errors).join(' ');
      const answers = known.get(key) ?? answersWithErrors(scene, question, errors);
      known.set(key, answers);
      return answers;
    },
  };
}

/** How well the figures of a set-up are known. @throws SpringInputError where an error makes them impossible. */
export function intervalsOf({ inputs, at, question, strokeMm }: UncertainView): Intervals {
  const all = intervals(inputs, (errors, figure) => at(errors).figures[figure]);
  return {
    ...all,
    ...clamped(all, TRAVELS, { lower: 0, upper: strokeMm }),
    riskPct: riskInterval(question.riskCurve, all.fullestHitM),
  };
}

/**
 * How well the changes from one set-up to another are known: better than the figures, since gauge, mass, volumes,
 * damping and friction are wrong alike before and after.
 */
export const intervalsOfChange = (before: UncertainView, after: UncertainView): Intervals =>
  intervals(after.inputs, (errors, figure) => {
    const [from, to] = [before.at(errors).figures[figure], after.at(errors).figures[figure]];
    return from === null || to === null ? null : to - from;
  });

/** Inputs as errors about zero, so that the same error can be made in two set-ups. */
function uncertainInputs({ unit, end }: Scene, sds: BikeEnd['uncertainty']): UncertainInput<SceneInput>[] {
  const input = (name: SceneInput, sd: number) => ({ name, value: 0, sd, isAssumed: false });
  const part = (name: SceneInput, pct: number, of: number) => input(name, (pct / PER_CENT) * of);
  return [
    input('gaugePressure', gaugePascalFromPsi(sds.pressurePsi)),
    part('sprungMass', sds.sprungMassPct, end.sprungMass),
    part('positiveVolume', sds.positiveVolumePct, unit.positiveVolume),
    part('negativeVolume', sds.negativeVolumePct, unit.negativeVolume),
    part('spacerVolume', sds.spacerVolumePct, unit.spacerVolume),
    part('lowerLegVolume', sds.lowerLegVolumePct, unit.lowerLegVolume),
    part('logDamping', sds.dampingPct, 1),
    part('sealFriction', sds.sealFrictionPct, unit.sealFriction),
  ];
}

function answersWithErrors(scene: Scene, question: Question, errors: Errors): Answers {
  const values = sceneInputs(scene);
  const moved = Object.fromEntries(
    (Object.entries(errors) as [SceneInput, number][]).map(([name, error]) => [name, values[name] + error]),
  );
  const there = sceneWith(scene, moved);
  // Who is heavier than assumed is so under braking too.
  const heavier = there.end.sprungMass / scene.end.sprungMass;
  const braking = { ...question.braking, totalMassKg: question.braking.totalMassKg * heavier };
  return answersFor(there, { ...question, braking });
}

/** Figures that end with the stroke, however wide their interval. */
const TRAVELS = ['sagMm', 'medianHitMm', 'highHitMm', 'reserveMm', 'brakingMm'] as const;

function clamped(
  all: Intervals,
  names: readonly Figure[],
  { lower, upper }: Interval,
): Partial<Record<Figure, Interval | null>> {
  return Object.fromEntries(
    names.map((name) => {
      const own = all[name];
      // Where it bottoms, small errors change nothing and tell nothing of large ones.
      if (own === null || own.lower === own.upper) return [name, null];
      return [name, { lower: Math.max(lower, own.lower), upper: Math.min(upper, own.upper) }];
    }),
  );
}

/** Risk bends too much for a straight line: it is read off the curve at both ends of the fullest hit's interval. */
function riskInterval(curve: Question['riskCurve'], fullest: Interval | null): Interval | null {
  if (fullest === null) return null;
  const [lower, upper] = [riskAbove(curve, fullest.upper), riskAbove(curve, fullest.lower)];
  return lower === null || upper === null ? null : { lower, upper };
}

function intervals(
  inputs: readonly UncertainInput<SceneInput>[],
  figureAt: (errors: Errors, figure: Figure) => number | null,
): Intervals {
  const entries = FIGURES.map((figure) => {
    const answer = propagateUncertainty(inputs, (errors) => figureAt(errors, figure) ?? undefined);
    return [figure, answer.status === 'found' ? { lower: answer.lower, upper: answer.upper } : null];
  });
  return Object.fromEntries(entries) as Intervals;
}
