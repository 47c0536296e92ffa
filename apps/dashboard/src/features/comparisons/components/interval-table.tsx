import { Table } from '@mantine/core';
import { formatSigned } from '../../../shared/format/numbers.js';
import type { IntervalRow } from '../api/comparison.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

interface IntervalTableProps<Row> {
  /** What the rows are: set-ups, or sections of the track. */
  readonly head: string;
  readonly rows: readonly Row[];
  readonly labelOf: (row: Row) => string;
}

const percent = (value: number | null) => (value === null ? '' : withUnit(formatSigned(value, 1), '%'));

/** The intervals in figures. */
export function IntervalTable<Row extends IntervalRow>({ head, rows, labelOf }: IntervalTableProps<Row>) {
  return (
    <details>
      <summary>{texts.table}</summary>
      <Table.ScrollContainer minWidth={420}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>{head}</Table.Th>
              <Table.Th>{texts.verdict}</Table.Th>
              <Table.Th ta="end">{texts.difference}</Table.Th>
              <Table.Th ta="end">{texts.from}</Table.Th>
              <Table.Th ta="end">{texts.to}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {rows.map((row) => (
              <Table.Tr key={labelOf(row)}>
                <Table.Td>{labelOf(row)}</Table.Td>
                <Table.Td>{row.verdict}</Table.Td>
                <Table.Td ta="end">{percent(row.differencePct)}</Table.Td>
                <Table.Td ta="end">{percent(row.lowPct)}</Table.Td>
                <Table.Td ta="end">{percent(row.highPct)}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </details>
  );
}
