import { List, Text } from '@mantine/core';
import { AssumedLink } from '../../../shared/ui/assumed-link.js';
import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';
import { assumedGroups } from '../model/assumed-groups.js';
import { texts } from '../texts.js';

interface AssumedListProps {
  readonly teamId: string;
  readonly end: BikeEnd;
  readonly ends: BikeEnds;
  /** Whether who looks may change the team's figures. */
  readonly canChange: boolean;
}

/** Every figure behind the answers that nobody has measured or entered: always in sight, and where to change it. */
export function AssumedList({ teamId, end, ends, canChange }: AssumedListProps) {
  const groups = assumedGroups(end, ends);
  return (
    <>
      {groups.length === 0 ? (
        <Text>{texts.nothingAssumed}</Text>
      ) : (
        <List>
          {groups.map((group) => (
            <List.Item key={group.id}>
              <strong>{texts.assumedOf[group.of]}:</strong> {group.figures.join(' · ')}
              {canChange && <AssumedLink teamId={teamId} input={group} />}
            </List.Item>
          ))}
        </List>
      )}
      {end.headAngleDeg !== null && (
        <Text size="sm" c="dimmed">
          {texts.braking}
        </Text>
      )}
    </>
  );
}
