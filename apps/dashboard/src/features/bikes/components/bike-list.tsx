import { formatNumber } from '../../../shared/format/numbers.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import { NameLink } from '../../../shared/ui/name-link.js';
import { RecordTable } from '../../../shared/ui/record-table.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

/** Names of the things a bike refers to, by id. */
type NameOf = (id: string) => string;

interface BikeListProps {
  readonly teamId: string;
  readonly bikes: readonly Bike[];
  readonly riderName: NameOf;
  readonly unitName: NameOf;
  readonly canChange: boolean;
}

export function BikeList({ teamId, bikes, riderName, unitName, canChange }: BikeListProps) {
  const name = ({ id, name: text }: Bike) => (
    <NameLink canChange={canChange} to="/teams/$teamId/team/bikes/$bikeId" params={{ teamId, bikeId: id }}>
      {text}
    </NameLink>
  );
  return (
    <RecordTable
      rows={bikes}
      columns={[
        { title: texts.name, cell: name },
        { title: texts.rider, cell: ({ riderId }) => riderName(riderId) },
        { title: texts.category, cell: ({ category }) => category },
        { title: texts.travel, isNumber: true, cell: travel },
        { title: texts.fork, cell: ({ forkUnitId }) => unitName(forkUnitId) },
        {
          title: texts.shock,
          cell: ({ shockUnitId }) => (shockUnitId === null ? texts.noShock : unitName(shockUnitId)),
        },
      ]}
    />
  );
}

const travel = ({ frontWheelTravelMm, rearWheelTravelMm }: Bike) =>
  withUnit(`${formatNumber(frontWheelTravelMm)} / ${formatNumber(rearWheelTravelMm)}`, 'mm');
