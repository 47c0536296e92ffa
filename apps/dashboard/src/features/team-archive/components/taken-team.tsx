import { Button, Group, List, Stack, Text } from '@mantine/core';
import type { components } from '../../../shared/http/generated/schema.js';
import { texts } from '../texts.js';

interface TakenTeamProps {
  readonly team: components['schemas']['ImportedTeamDto'];
  readonly onOpen: () => void;
}

/** What came in, and who is still to be invited. */
export function TakenTeam({ team, onOpen }: TakenTeamProps) {
  return (
    <Stack role="status">
      <Text fw={600}>{texts.taken(team.name)}</Text>
      <Text>{texts.rows(team.records)}</Text>
      {team.people.length > 0 && (
        <div>
          <Text>{texts.invite}</Text>
          <List>
            {team.people.map(({ displayName, role }, place) => (
              <List.Item key={`${place} ${displayName}`}>
                {displayName} ({texts.role(role)})
              </List.Item>
            ))}
          </List>
        </div>
      )}
      <Group>
        <Button onClick={onOpen}>{texts.open}</Button>
      </Group>
    </Stack>
  );
}
