import { formatCount, pressureText } from '../../../shared/format/numbers.js';
import { isSameFill, type Fill } from './fill.js';
import type { Rebound } from './rebound.js';

export interface Work {
  /** What is needed against what lies in the box; null where no spacer goes in. */
  readonly spacersNeeded: { readonly count: number; readonly inStock: number } | null;
  readonly steps: readonly string[];
}

const pump = (fill: Fill) => `Pump to ${pressureText(fill.pressurePsi)} at full extension.`;

const CYCLE =
  'Press it slowly a few times through its first third, so that both chambers find the same pressure; ' +
  'read the gauge again and correct it.';

const OPEN = [
  'Let all air out before the cap is opened: hold the valve open, press the unit slowly in and let it come back, ' +
    'and hold it open again until nothing more comes.',
  'Open the cap with a socket of the right size, flat-faced and fully seated.',
];

const CLOSE = 'Start the thread of the cap by hand; tighten it to the torque in the unit’s own manual.';

const REBOUND = {
  slower: 'The spring pushes back harder: try the rebound a click slower.',
  faster: 'The spring pushes back less: try the rebound a click faster.',
};

const AFTER = 'Ride slowly at first. Stop on any hard knock, or where oil or air comes out.';

/** What to do at one end to get from now to the proposal, in this order; nothing where nothing changes. */
export function workFor(now: Fill, proposed: Fill, rebound: Rebound, inStock: number): Work {
  if (isSameFill(now, proposed)) return { spacersNeeded: null, steps: [] };
  const more = proposed.spacers - now.spacers;
  const fill = `${pressureText(now.pressurePsi)}, ${formatCount(now.spacers, 'spacer')}`;
  return {
    spacersNeeded: more > 0 ? { count: more, inStock } : null,
    steps: [
      `Write down what is in it, to be able to go back: ${fill}, and the clicks.`,
      ...(more === 0 ? [] : [...OPEN, spacerStep(more, proposed.spacers), CLOSE]),
      pump(proposed),
      CYCLE,
      ...(rebound === 'slower' || rebound === 'faster' ? [REBOUND[rebound]] : []),
      AFTER,
    ],
  };
}

function spacerStep(more: number, then: number): string {
  const count = formatCount(Math.abs(more), 'spacer');
  return `${more > 0 ? `Put ${count} in` : `Take ${count} out`}; there are ${then} in it then.`;
}
