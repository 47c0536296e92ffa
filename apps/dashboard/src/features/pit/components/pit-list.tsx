import type { Fleet } from '../../../shared/http/reads/fleet.js';
import { PitRow } from './pit-row.js';
import classes from './pit.module.css';

interface PitListProps {
  readonly teamId: string;
  readonly fleet: Fleet;
  readonly canSetUp: boolean;
}

/** Every bike of the team, one under another, so that the odd one is seen at a glance. */
export function PitList({ teamId, fleet, canSetUp }: PitListProps) {
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
          />
        </li>
      ))}
    </ul>
  );
}
