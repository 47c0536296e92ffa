import { Table } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { SpacerStock } from '../api/spacers.js';
import { texts } from '../texts.js';

interface StockTableProps {
  readonly stocks: readonly SpacerStock[];
  readonly unitName: (id: string) => string;
}

/** What lies in the box, by size, and which units take it. */
export function StockTable({ stocks, unitName }: StockTableProps) {
  return (
    <Table.ScrollContainer minWidth={320}>
      <Table captionSide="top">
        <Table.Caption ta="start">{texts.caption}</Table.Caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.size}</Table.Th>
            <Table.Th ta="end">{texts.inStock}</Table.Th>
            <Table.Th>{texts.fits}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {stocks.map(({ unitKind, spacerVolumeMl, inStock, unitIds }) => (
            <Table.Tr key={`${unitKind} ${spacerVolumeMl}`}>
              <Table.Th scope="row">{texts.sizeOf(unitKind, formatNumber(spacerVolumeMl, 1))}</Table.Th>
              <Table.Td ta="end">{inStock}</Table.Td>
              <Table.Td>{unitIds.length === 0 ? texts.noUnit : unitIds.map(unitName).join('; ')}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
