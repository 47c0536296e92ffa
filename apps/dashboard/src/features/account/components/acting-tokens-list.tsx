import { List, Stack, Text } from '@mantine/core';
import { TextLink } from '../../../shared/ui/link.js';
import type { ActingTokens } from '../api/acting-tokens.js';
import { texts } from '../password-texts.js';

interface ActingTokensListProps {
  readonly tokens: readonly ActingTokens[];
  /** Teams whose page of tokens is open to the person. */
  readonly openTeamIds: ReadonlySet<string>;
}

/** How many API tokens act for the account, with the way to them. */
export function ActingTokensList({ tokens, openTeamIds }: ActingTokensListProps) {
  return (
    <Stack gap="xs">
      <Text size="sm">{texts.tokensStay}</Text>
      <List size="sm">
        {tokens.map(({ teamId, teamName, tokens: count }) => (
          <List.Item key={teamId}>
            {openTeamIds.has(teamId) ? (
              <TextLink to="/teams/$teamId/team/tokens" params={{ teamId }}>
                {texts.tokensIn(count, teamName)}
              </TextLink>
            ) : (
              texts.tokensIn(count, teamName)
            )}
          </List.Item>
        ))}
      </List>
    </Stack>
  );
}
