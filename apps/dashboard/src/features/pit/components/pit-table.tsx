import plain from '../../../shared/ui/plain-table.module.css';
import type { PitBike } from '../api/pit.js';
import { texts } from '../texts.js';
import { PitRow } from './pit-row.js';
import classes from './pit.module.css';

interface PitTableProps {
  readonly teamId: string;
  readonly bikes: readonly PitBike[];
  readonly canSetUp: boolean;
}

const COLUMNS = [texts.bike, texts.fork, texts.shock, texts.since, texts.waits, texts.lastRun];

/**
 * Every bike of the team, one under another, so that the odd one is seen at a glance. The roles are written out: a
 * browser forgets that it is a table where its rows are laid out as cards.
 */
export function PitTable({ teamId, bikes, canSetUp }: PitTableProps) {
  return (
    <table role="table" className={`${plain.table} ${classes.table}`}>
      <caption className="ll-heard-only">{texts.caption}</caption>
      <thead role="rowgroup">
        <tr role="row">
          {COLUMNS.map((name) => (
            <th key={name} role="columnheader" scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {bikes.map((bike) => (
          <PitRow key={bike.bikeId} teamId={teamId} bike={bike} canSetUp={canSetUp} />
        ))}
      </tbody>
    </table>
  );
}
