import { Text } from '@mantine/core';
import { setupChanges } from '../../../shared/format/setup-changes.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { texts } from '../texts.js';
import { GoBack } from './go-back.js';
import classes from './setups.module.css';

interface SetupHistoryProps {
  /** Newest first. */
  readonly setups: readonly Setup[];
  readonly decisions: readonly Decision[];
  readonly teamId: string;
  /** Whether who looks may put an earlier one back. */
  readonly canGoBack: boolean;
}

/** Every revision with what it changed, why, and what came of it. */
export function SetupHistory({ teamId, setups, decisions, canGoBack }: SetupHistoryProps) {
  if (setups.length === 0) return <Text>{texts.historyNone}</Text>;
  return (
    <ol className={classes.history} reversed>
      {setups.map((setup, place) => (
        <li key={setup.id}>
          <Text>
            <strong>{formatDay(setup.createdAt)}</strong> ·{' '}
            {changesOf(
              setup,
              setups.find(({ id }) => id === setup.previousId),
            )}
          </Text>
          <Why decision={decisions.find(({ toSetupId }) => toSetupId === setup.id)} />
          {canGoBack && place > 0 && <GoBack teamId={teamId} setup={setup} />}
        </li>
      ))}
    </ol>
  );
}

function changesOf(setup: Setup, before: Setup | undefined): string {
  if (setup.previousId === null) return texts.first;
  if (before === undefined) return texts.revision(setup.revision);
  const changes = setupChanges(before, setup);
  return changes.length === 0 ? texts.nothing : changes.join('; ');
}

function Why({ decision }: { decision: Decision | undefined }) {
  if (decision === undefined) return null;
  return (
    <>
      <Text>“{decision.reason}”</Text>
      <Text size="sm" c="dimmed">
        {texts.outcomeOf}: {decision.outcome === null ? texts.open : texts.outcome[decision.outcome]}
        {decision.outcomeNote !== null && decision.outcomeNote !== '' && `, “${decision.outcomeNote}”`}
      </Text>
    </>
  );
}
