import { Button, Group, Stack, Text } from '@mantine/core';
import { texts } from '../texts.js';

export function DownloadArchive({ teamId }: { teamId: string }) {
  return (
    <Stack>
      <Text maw="70ch">{texts.getLead}</Text>
      <Group>
        <Button component="a" variant="default" href={`/api/v1/teams/${teamId}/archive`} download="team.json">
          {texts.getButton}
        </Button>
      </Group>
    </Stack>
  );
}
