import { Table, Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';

interface TrackListProps {
  readonly teamId: string;
  readonly tracks: readonly Track[];
}

/** The tracks of the team; each leads to its demand and the baselines on it. */
export function TrackList({ teamId, tracks }: TrackListProps) {
  return (
    <Table.ScrollContainer minWidth={320}>
      <Table>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.name}</Table.Th>
            <Table.Th ta="end">{texts.altitude}</Table.Th>
            <Table.Th>{texts.sections}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {tracks.map((track) => (
            <Table.Tr key={track.id}>
              <Table.Td>
                <TextLink to="/teams/$teamId/tracks/$trackId" params={{ teamId, trackId: track.id }}>
                  {track.name}
                </TextLink>
                {track.note !== '' && (
                  <Text size="sm" c="dimmed">
                    {track.note}
                  </Text>
                )}
              </Table.Td>
              <Table.Td ta="end">{formatNumber(track.altitudeM)} m</Table.Td>
              <Table.Td>{track.sections.join(' · ')}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
