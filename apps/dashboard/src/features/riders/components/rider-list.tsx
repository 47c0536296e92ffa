import { Table } from '@mantine/core';
import { massText } from '../../../shared/format/quantities.js';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { TextLink } from '../../../shared/ui/link.js';
import { Assumed } from '../../../shared/ui/note.js';
import { texts } from '../texts.js';

interface RiderListProps {
  readonly teamId: string;
  readonly riders: readonly Rider[];
  readonly canChange: boolean;
}

const sag = ({ sagLowPct, sagHighPct }: Rider['fork']) =>
  `${formatNumber(sagLowPct)}–${formatNumber(sagHighPct)} %`;

export function RiderList({ teamId, riders, canChange }: RiderListProps) {
  return (
    <Table.ScrollContainer minWidth={560}>
      <Table>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.name}</Table.Th>
            <Table.Th ta="end">{texts.mass}</Table.Th>
            <Table.Th ta="end">{texts.forkSag}</Table.Th>
            <Table.Th ta="end">{texts.shockSag}</Table.Th>
            <Table.Th ta="end">{texts.risk}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {riders.map((rider) => (
            <Table.Tr key={rider.id}>
              <Table.Td>
                {canChange ? (
                  <TextLink to="/teams/$teamId/team/riders/$riderId" params={{ teamId, riderId: rider.id }}>
                    {rider.name}
                  </TextLink>
                ) : (
                  rider.name
                )}
              </Table.Td>
              <Table.Td ta="end">
                {massText(rider.readyMassKg)}
                {rider.readyMassSource === 'assumed' && <Assumed />}
              </Table.Td>
              <Table.Td ta="end">{sag(rider.fork)}</Table.Td>
              <Table.Td ta="end">{sag(rider.shock)}</Table.Td>
              <Table.Td ta="end">{formatNumber(rider.acceptedRiskPct)} %</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
