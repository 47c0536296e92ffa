import { Group, List, NativeSelect, Text } from '@mantine/core';
import { useState } from 'react';
import { setupChanges } from '../../../shared/format/setup-changes.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { texts } from '../texts.js';

/** What differs between any two revisions of a bike. */
export function CompareRevisions({ setups }: { setups: readonly Setup[] }) {
  const [now, before] = setups;
  const [fromId, setFromId] = useState(before?.id ?? '');
  const [toId, setToId] = useState(now?.id ?? '');
  const from = setups.find(({ id }) => id === fromId) ?? before;
  const to = setups.find(({ id }) => id === toId) ?? now;
  if (from === undefined || to === undefined) return null;
  const choices = setups.map(({ id, revision, createdAt }) => ({
    value: id,
    label: `${texts.revision(revision)}, ${formatDay(createdAt)}`,
  }));
  const changes = setupChanges(from, to);
  return (
    <div>
      <Group gap="md" className="ll-screen-only">
        <NativeSelect
          label={texts.compareFrom}
          value={from.id}
          data={choices}
          onChange={(event) => setFromId(event.currentTarget.value)}
        />
        <NativeSelect
          label={texts.compareTo}
          value={to.id}
          data={choices}
          onChange={(event) => setToId(event.currentTarget.value)}
        />
      </Group>
      <div role="status">
        {changes.length === 0 ? (
          <Text mt="sm">{texts.compareSame}</Text>
        ) : (
          <List mt="sm">
            {changes.map((change) => (
              <List.Item key={change}>{change}</List.Item>
            ))}
          </List>
        )}
      </div>
    </div>
  );
}
