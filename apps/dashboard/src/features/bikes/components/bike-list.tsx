import { Table } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import { TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';

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
  return (
    <Table.ScrollContainer minWidth={640}>
      <Table>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.name}</Table.Th>
            <Table.Th>{texts.rider}</Table.Th>
            <Table.Th>{texts.category}</Table.Th>
            <Table.Th ta="end">{texts.travel}</Table.Th>
            <Table.Th>{texts.fork}</Table.Th>
            <Table.Th>{texts.shock}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {bikes.map((bike) => (
            <Table.Tr key={bike.id}>
              <Table.Td>
                {canChange ? (
                  <TextLink to="/teams/$teamId/team/bikes/$bikeId" params={{ teamId, bikeId: bike.id }}>
                    {bike.name}
                  </TextLink>
                ) : (
                  bike.name
                )}
              </Table.Td>
              <Table.Td>{riderName(bike.riderId)}</Table.Td>
              <Table.Td>{bike.category}</Table.Td>
              <Table.Td ta="end">
                {formatNumber(bike.frontWheelTravelMm)} / {formatNumber(bike.rearWheelTravelMm)} mm
              </Table.Td>
              <Table.Td>{unitName(bike.forkUnitId)}</Table.Td>
              <Table.Td>{bike.shockUnitId === null ? texts.noShock : unitName(bike.shockUnitId)}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
