import { Table } from '@mantine/core';
import { formatRunTime } from '../../../shared/format/time.js';
import type { RunPoint } from '../api/comparison.js';
import { texts } from '../texts.js';

interface RunTableProps {
  readonly points: readonly RunPoint[];
  readonly labelOf: (point: RunPoint) => string;
}

const time = (seconds: number | null) => (seconds === null ? '' : formatRunTime(seconds));

/** The runs of a picture in figures. */
export function RunTable({ points, labelOf }: RunTableProps) {
  return (
    <details>
      <summary>{texts.table}</summary>
      <Table.ScrollContainer minWidth={420}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th ta="end">{texts.place}</Table.Th>
              <Table.Th>{texts.arm}</Table.Th>
              <Table.Th ta="end">{texts.time}</Table.Th>
              <Table.Th ta="end">{texts.fitted}</Table.Th>
              <Table.Th ta="end">{texts.trend}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {points.map((point) => (
              <Table.Tr key={point.runId}>
                <Table.Td ta="end">{point.position}</Table.Td>
                <Table.Td>{labelOf(point)}</Table.Td>
                <Table.Td ta="end">
                  {point.timeS === null ? texts.notTimed : formatRunTime(point.timeS)}
                  {point.voided && ` (${texts.void})`}
                </Table.Td>
                <Table.Td ta="end">{time(point.fittedS)}</Table.Td>
                <Table.Td ta="end">{time(point.trendS)}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </details>
  );
}
