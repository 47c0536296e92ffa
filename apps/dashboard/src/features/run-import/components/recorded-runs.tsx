import { List, Table, Text } from '@mantine/core';
import { formatCount, formatNumber } from '../../../shared/format/numbers.js';
import { formatMoment, formatRunTime } from '../../../shared/format/time.js';
import { Warning } from '../../../shared/ui/note.js';
import type { RecordingPreview } from '../api/recording.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

/** 95 of 100 times are within so many standard uncertainties. */
const COVERAGE = 1.96;

/** The runs that a recording holds, how good their times are, and what stands against storing them. */
export function RecordedRuns({ preview }: { preview: RecordingPreview }) {
  const { fixes, runs, problems } = preview;
  return (
    <>
      {problems.length > 0 && (
        <Warning word={texts.cannot} urgent>
          <List>
            {problems.map((problem) => (
              <List.Item key={problem}>{problem}</List.Item>
            ))}
          </List>
        </Warning>
      )}
      <Text size="sm">{texts.fixes(formatCount(fixes, 'position'))}</Text>
      {runs.length > 0 && (
        <Table.ScrollContainer minWidth={280}>
          <Table captionSide="top">
            <Table.Caption ta="start">{texts.runTimes}</Table.Caption>
            <Table.Thead>
              <Table.Tr>
                <Table.Th>{texts.start}</Table.Th>
                <Table.Th ta="end">{texts.time}</Table.Th>
                <Table.Th ta="end">{texts.goodTo}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {runs.map(({ startedAt, timeS, timeSdS }) => (
                <Table.Tr key={startedAt}>
                  <Table.Th scope="row">{formatMoment(startedAt)}</Table.Th>
                  <Table.Td ta="end">{formatRunTime(timeS)}</Table.Td>
                  <Table.Td ta="end">{withUnit(`±${formatNumber(COVERAGE * timeSdS, 1)}`, 's')}</Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </Table.ScrollContainer>
      )}
    </>
  );
}
