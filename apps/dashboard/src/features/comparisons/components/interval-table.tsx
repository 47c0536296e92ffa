import { Table } from '@mantine/core';
import { formatChange } from '../../../shared/format/numbers.js';
import type { ArmComparison } from '../api/comparison.js';
import { texts } from '../texts.js';

interface IntervalTableProps {
  readonly arms: readonly ArmComparison[];
  readonly labelOf: (arm: ArmComparison) => string;
}

const percent = (value: number | null) => (value === null ? '' : `${formatChange(value, 1)} %`);

/** The intervals in figures. */
export function IntervalTable({ arms, labelOf }: IntervalTableProps) {
  return (
    <details>
      <summary>{texts.table}</summary>
      <Table.ScrollContainer minWidth={420}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>{texts.arm}</Table.Th>
              <Table.Th>{texts.verdict}</Table.Th>
              <Table.Th ta="end">{texts.difference}</Table.Th>
              <Table.Th ta="end">{texts.from}</Table.Th>
              <Table.Th ta="end">{texts.to}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {arms.map((arm) => (
              <Table.Tr key={labelOf(arm)}>
                <Table.Td>{labelOf(arm)}</Table.Td>
                <Table.Td>{arm.verdict}</Table.Td>
                <Table.Td ta="end">{percent(arm.differencePct)}</Table.Td>
                <Table.Td ta="end">{percent(arm.lowPct)}</Table.Td>
                <Table.Td ta="end">{percent(arm.highPct)}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </details>
  );
}
