import type { ReactNode } from 'react';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import { DecisionEntry } from './decision-entry.js';
import classes from './decisions.module.css';

interface DecisionListProps {
  readonly teamId: string;
  readonly decisions: readonly Decision[];
  readonly fleet: Fleet;
  readonly trackName: (id: string) => string;
  /** What can be done about an open one. */
  readonly enterOutcome?: (decision: Decision) => ReactNode;
}

/** Decisions under one another, as the list has them. */
export function DecisionList({ teamId, decisions, fleet, trackName, enterOutcome }: DecisionListProps) {
  return (
    <ol className={classes.list}>
      {decisions.map((decision) => (
        <li key={decision.id}>
          <DecisionEntry
            teamId={teamId}
            decision={decision}
            bike={fleet.bikes.find(({ id }) => id === decision.bikeId)}
            units={fleet.units}
            riderName={fleet.riderName(decision.riderId)}
            trackName={decision.trackId === null ? null : trackName(decision.trackId)}
          >
            {enterOutcome?.(decision)}
          </DecisionEntry>
        </li>
      ))}
    </ol>
  );
}
