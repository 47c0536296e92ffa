import { useMemo, useState } from 'react';
import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';
import { openBench, propose, type OpenedBench, type Proposed } from '../model/bench.js';
import { AS_NOW, type Proposal } from '../model/proposal.js';

export interface EndInHand {
  /** Null where the bike has no such end. */
  readonly opened: OpenedBench | null;
  readonly proposal: Proposal;
  /** Null without a bench to try it at. */
  readonly proposed: Proposed | null;
  readonly onPropose: (proposal: Proposal) => void;
}

/** One end of the bike with what is proposed for it; computed anew only where something has moved. */
export function useEnd(end: BikeEnd | null, braking: BikeEnds['braking']): EndInHand {
  const [proposal, onPropose] = useState(AS_NOW);
  const opened = useMemo(() => end && openBench(end, braking), [end, braking]);
  const proposed = useMemo(
    () => (opened?.status === 'ready' ? propose(opened, proposal) : null),
    [opened, proposal],
  );
  return { opened, proposal, proposed, onPropose };
}

/** Whether anything at this end differs from now, or is typed that cannot be. */
export const isTouched = ({ proposal }: EndInHand) =>
  proposal.pressurePsi !== null || proposal.spacers !== null;
