import { massText } from '../../../shared/format/quantities.js';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { Assumed } from '../../../shared/ui/note.js';
import { NameLink } from '../../../shared/ui/name-link.js';
import { RecordTable } from '../../../shared/ui/record-table.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

interface RiderListProps {
  readonly teamId: string;
  readonly riders: readonly Rider[];
  readonly canChange: boolean;
}

const sag = ({ sagLowPct, sagHighPct }: Rider['fork']) =>
  withUnit(`${formatNumber(sagLowPct)}–${formatNumber(sagHighPct)}`, '%');

export function RiderList({ teamId, riders, canChange }: RiderListProps) {
  const name = ({ id, name: text }: Rider) => (
    <NameLink canChange={canChange} to="/teams/$teamId/team/riders/$riderId" params={{ teamId, riderId: id }}>
      {text}
    </NameLink>
  );
  return (
    <RecordTable
      rows={riders}
      columns={[
        { title: texts.name, cell: name },
        { title: texts.mass, isNumber: true, cell: (rider) => <Mass rider={rider} /> },
        { title: texts.forkSag, isNumber: true, cell: ({ fork }) => sag(fork) },
        { title: texts.shockSag, isNumber: true, cell: ({ shock }) => sag(shock) },
        {
          title: texts.risk,
          isNumber: true,
          cell: ({ acceptedRiskPct }) => withUnit(formatNumber(acceptedRiskPct), '%'),
        },
      ]}
    />
  );
}

const Mass = ({ rider }: { rider: Rider }) => (
  <>
    {massText(rider.readyMassKg)}
    {rider.readyMassSource === 'assumed' && <Assumed />}
  </>
);
