import { gaugePascal, millimetresFromMetres, psiFromGaugePascal } from '@loamledger/units';
import type { EvidenceLevel } from '@loamledger/evidence';
import { NEXT_RUNS, type HighHit, type NextRunKind, type Sharpening } from './sharpen.js';
import type { TimeLine } from './end-baseline.js';
import type { EndWishes, Wish } from './wishes.js';

const PER_CENT = 100;

const decisions = (count: number): string => (count === 1 ? '1 decision' : `${count} decisions`);

/** Whose wish it is. */
export function wishMessage(wish: Wish<unknown>, usual: string): string {
  switch (wish.source) {
    case 'entered':
      return 'As entered for this rider.';
    case 'this rider':
      return `Learned from what this rider has kept: ${decisions(wish.own)}.`;
    case 'the team':
      return `Learned from what the team has kept: ${decisions(wish.team)}.`;
    case 'usual':
      return usual;
  }
}

/** Whose wish the reserve is; beside an entered one what the rider has kept, so that nobody has to guess. */
export function reserveMessage({ reserve, keptReserve }: EndWishes, stroke: number): string {
  const message = wishMessage(reserve, 'The usual wish: nothing has been kept yet.');
  if (reserve.source !== 'entered' || keptReserve === null) return message;
  const left = millimetresFromMetres(keptReserve * stroke).toFixed(0);
  return `${message} What this rider has kept leaves ${left} mm (${decisions(reserve.own)}).`;
}

const filled = ({ pressurePa, spacers }: { pressurePa: number; spacers: number }): string =>
  `${psiFromGaugePascal(gaugePascal(pressurePa)).toFixed(0)} psi with ${spacers} spacer${spacers === 1 ? '' : 's'}`;

const percent = (part: number): string => (part * PER_CENT).toFixed(1);

/** What a plan found, and that the baseline does not take it in. */
export function timeSentence({ verdict, faster, slower, towards }: TimeLine): string {
  const { by, low, high } = verdict.gain;
  const found = `${filled(faster)} was ${percent(by)} % faster than ${filled(slower)} (${percent(low)} to ${percent(high)} %).`;
  const next = towards
    ? `Nearest to it that meets sag and risk: ${filled(towards)}.`
    : 'No set-up that meets sag and risk comes near it.';
  return `${found} ${next}`;
}

const WHO: Record<NextRunKind, string> = {
  'this rider here': 'by this rider here',
  'another rider here': 'by another rider here',
  'this rider elsewhere': 'by this rider on another track',
};
const COUNT_WORDS = ['no', 'One', 'Two'];

const range = ({ low, high }: HighHit): string => `${low.toFixed(2)}–${high.toFixed(2)} m`;

/** What would sharpen the forecast most. */
export function sharpenSentence({ now, options }: Sharpening, evidence: EvidenceLevel): string {
  const [best] = options;
  if (!best) return '';
  const runs = `${COUNT_WORDS[NEXT_RUNS] ?? NEXT_RUNS} runs ${WHO[best.kind]}`;
  const [before, after] = [range(now), range(best.then)];
  // Where both ends stay the same to a centimetre, two equal ranges would tell nothing.
  const sentence =
    before === after
      ? `${runs} would narrow the 95 % hit, ${before}, by less than 2 cm.`
      : `${runs} would narrow the 95 % hit from ${before} to ${after}.`;
  const isBounds = evidence.lowerBoundOnly && evidence.counts.atLeastHere > 0;
  return isBounds
    ? `${sentence} Ride them on a set-up that leaves travel: a ring at the end says only ‘at least’.`
    : sentence;
}
