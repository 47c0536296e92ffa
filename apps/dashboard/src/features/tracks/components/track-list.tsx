import { Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { TextLink } from '../../../shared/ui/link.js';
import { RecordTable } from '../../../shared/ui/record-table.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';

interface TrackListProps {
  readonly teamId: string;
  readonly tracks: readonly Track[];
}

/** The tracks of the team; each leads to its demand and the baselines on it. */
export function TrackList({ teamId, tracks }: TrackListProps) {
  const name = ({ id, name: text, note }: Track) => (
    <>
      <TextLink to="/teams/$teamId/tracks/$trackId" params={{ teamId, trackId: id }}>
        {text}
      </TextLink>
      {note !== '' && (
        <Text size="sm" c="dimmed">
          {note}
        </Text>
      )}
    </>
  );
  return (
    <RecordTable
      rows={tracks}
      columns={[
        { title: texts.name, cell: name },
        {
          title: texts.altitude,
          isNumber: true,
          cell: ({ altitudeM }) => withUnit(formatNumber(altitudeM), 'm'),
        },
        { title: texts.sections, cell: ({ sections }) => sections.join(' · ') },
      ]}
    />
  );
}
