import { Table, Text } from '@mantine/core';
import { formatCount } from '../../../shared/format/numbers.js';
import { formatDay, formatRunTime } from '../../../shared/format/time.js';
import type { ImportPreview } from '../api/preview-import.js';
import { texts } from '../texts.js';

/** What the file would store, and its first lines as they are understood. */
export function ImportRows({ preview }: { preview: ImportPreview }) {
  return (
    <>
      <Text>
        {texts.would}: {formatCount(preview.runs, 'run')} ({preview.voidedRuns} {texts.voided}),{' '}
        {preview.newSessions} {texts.newSessions}, {preview.newSetups} {texts.newSetups}.
      </Text>
      <Table.ScrollContainer minWidth={640}>
        <Table captionSide="top">
          <Table.Caption ta="start">{texts.first(preview.rows.length)}</Table.Caption>
          <Table.Thead>
            <Table.Tr>
              <Table.Th ta="end">{texts.line}</Table.Th>
              <Table.Th>{texts.day}</Table.Th>
              <Table.Th>{texts.track}</Table.Th>
              <Table.Th>{texts.rider}</Table.Th>
              <Table.Th>{texts.bike}</Table.Th>
              <Table.Th>{texts.condition}</Table.Th>
              <Table.Th ta="end">{texts.setup}</Table.Th>
              <Table.Th ta="end">{texts.time}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {preview.rows.map((row) => (
              <Table.Tr key={row.line}>
                <Table.Td ta="end">{row.line}</Table.Td>
                <Table.Td>{formatDay(row.day)}</Table.Td>
                <Table.Td>{row.track}</Table.Td>
                <Table.Td>{row.rider}</Table.Td>
                <Table.Td>{row.bike}</Table.Td>
                <Table.Td>{row.condition}</Table.Td>
                <Table.Td ta="end">{row.setupRevision}</Table.Td>
                <Table.Td ta="end">
                  {row.timeS === null ? texts.notTimed : formatRunTime(row.timeS)}
                  {row.voided && ` · ${texts.voided}`}
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    </>
  );
}
