import type { SpringInputError } from '@loamledger/spring';
import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';
import { answersFor, type Answers, type Question } from './answers.js';
import { curveOf, type CurvePoint } from './curves.js';
import type { Fill } from './fill.js';
import { limitsOf, type Limits } from './limits.js';
import { mountOf, sceneOf, tried, type Mount } from './mount.js';
import { checkProposal, type Checked, type Proposal } from './proposal.js';

/** What a set-up does: figures and curves. */
export interface View {
  readonly fill: Fill;
  readonly answers: Answers;
  readonly curve: readonly CurvePoint[];
}

/** One end of the bike, ready to try changes at. */
export interface Bench {
  readonly status: 'ready';
  readonly end: BikeEnd;
  readonly mount: Mount;
  readonly question: Question;
  readonly limits: Limits;
  readonly now: View;
}

/** A bench, or why there is none. */
export type OpenedBench =
  | Bench
  | { readonly status: 'not set up'; readonly end: BikeEnd }
  | { readonly status: 'impossible'; readonly end: BikeEnd; readonly refusal: SpringInputError };

export function openBench(end: BikeEnd, braking: BikeEnds['braking']): OpenedBench {
  const { fill } = end;
  if (fill === null) return { status: 'not set up', end };
  const { forecast, riskCurve, headAngleDeg } = end;
  const question = { forecast, riskCurve, headAngleDeg, braking };
  const opened = tried(() => {
    const mount = mountOf(end);
    return { mount, now: viewOf(mount, fill, question) };
  });
  return opened.status === 'refused'
    ? { status: 'impossible', end, refusal: opened.refusal }
    : { status: 'ready', end, question, limits: limitsOf(end.limits), ...opened.answer };
}

/** What a proposal does, or at which field it cannot be. */
export interface Proposed extends Pick<Checked, 'problems'> {
  /** Null while something proposed cannot be. */
  readonly view: View | null;
}

export function propose(bench: Bench, proposal: Proposal): Proposed {
  const { fill, problems } = checkProposal(proposal, bench.now.fill, bench.limits);
  if (fill === null) return { view: null, problems };
  if (fill.pressurePsi === bench.now.fill.pressurePsi && fill.spacers === bench.now.fill.spacers) {
    return { view: bench.now, problems };
  }
  const view = tried(() => viewOf(bench.mount, fill, bench.question));
  // The unit stood with what is in it now and the pressure is one that units take: it is the spacers that cannot be.
  return view.status === 'answered'
    ? { view: view.answer, problems }
    : { view: null, problems: { spacers: 'chamber full' } };
}

function viewOf(mount: Mount, fill: Fill, question: Question): View {
  const scene = sceneOf(mount, fill);
  return { fill, answers: answersFor(scene, question), curve: curveOf(scene) };
}
