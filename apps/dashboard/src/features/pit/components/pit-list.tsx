import type { ReactNode } from 'react';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import { PitRow } from './pit-row.js';
import classes from './pit.module.css';

interface PitListProps {
  readonly teamId: string;
  readonly fleet: Fleet;
  readonly canSetUp: boolean;
  /** The open test plans of a bike. */
  readonly plansOf: (bikeId: string) => ReactNode;
}

/** Every bike of the team, one under another, so that the odd one is seen at a glance. */
export function PitList({ teamId, fleet, canSetUp, plansOf }: PitListProps) {
  return (
    <ul className={classes.list}>
      {fleet.bikes.map((bike) => (
        <li key={bike.id} className={classes.row}>
          <PitRow
            teamId={teamId}
            bike={bike}
            riderName={fleet.riderName(bike.riderId)}
            units={fleet.units.filter(({ id }) => id === bike.forkUnitId || id === bike.shockUnitId)}
            canSetUp={canSetUp}
            plans={plansOf(bike.id)}
          />
        </li>
      ))}
    </ul>
  );
}
