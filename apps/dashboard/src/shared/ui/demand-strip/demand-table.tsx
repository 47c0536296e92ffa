import { Table } from '@mantine/core';
import { formatHeight } from '../../format/numbers.js';
import type { DemandRow } from './scale.js';
import { texts } from './texts.js';

/** The strip in figures, for those who cannot see it or want the numbers. */
export function DemandTable({ rows }: { rows: readonly DemandRow[] }) {
  return (
    <details>
      <summary>{texts.table}</summary>
      <Table.ScrollContainer minWidth={480}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>{texts.rider}</Table.Th>
              <Table.Th>{texts.run}</Table.Th>
              <Table.Th ta="end">{texts.height}</Table.Th>
              <Table.Th>{texts.sort}</Table.Th>
              <Table.Th>{texts.counts}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {rows.flatMap((row) =>
              row.readings.map((reading) => (
                <Table.Tr key={reading.id}>
                  <Table.Td>{row.label}</Table.Td>
                  <Table.Td>{reading.label}</Table.Td>
                  <Table.Td ta="end">{formatHeight(reading.heightM)}</Table.Td>
                  <Table.Td>{texts.kind[reading.kind]}</Table.Td>
                  <Table.Td>{reading.voided ? texts.no : texts.yes}</Table.Td>
                </Table.Tr>
              )),
            )}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </details>
  );
}
