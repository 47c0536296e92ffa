import { workSteps } from '@loamledger/spring';
import { gaugePascalFromPsi } from '@loamledger/units';
import { stepWords } from '../../../shared/format/work-step-words.js';
import type { Fill } from './fill.js';
import type { Rebound } from './rebound.js';

export interface Work {
  /** What is needed against what lies in the box; null where no spacer goes in. */
  readonly spacersNeeded: { readonly count: number; readonly inStock: number } | null;
  readonly steps: readonly string[];
}

const REBOUND = {
  slower: 'The spring pushes back harder: try the rebound a click slower.',
  faster: 'The spring pushes back less: try the rebound a click faster.',
};

/** The bench changes pressure and spacers; clicks stay as they are. */
const settingOf = ({ pressurePsi, spacers }: Fill) => ({
  pressure: gaugePascalFromPsi(pressurePsi),
  spacers,
  rebound: null,
  compression: null,
});

/** What to do at one end to get from now to the proposal, in this order; nothing where nothing changes. */
export function workFor(now: Fill, proposed: Fill, rebound: Rebound, inStock: number): Work {
  const more = proposed.spacers - now.spacers;
  const steps = workSteps(settingOf(now), settingOf(proposed));
  const figures = {
    pressurePsi: proposed.pressurePsi,
    spacersChange: more,
    spacersThen: proposed.spacers,
  };
  return {
    spacersNeeded: more > 0 ? { count: more, inStock } : null,
    steps: steps.flatMap((step) => [
      // The hint comes before the first ride.
      ...(step === 'ride-slowly' && (rebound === 'slower' || rebound === 'faster') ? [REBOUND[rebound]] : []),
      stepWords({ step, ...figures }),
    ]),
  };
}
