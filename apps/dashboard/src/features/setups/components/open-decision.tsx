import { Stack, Text } from '@mantine/core';
import { formatDay } from '../../../shared/format/time.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import { texts } from '../texts.js';
import { EnterOutcome } from './enter-outcome.js';
import { ExpectedTable } from './expected-table.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';

interface OpenDecisionProps {
  readonly teamId: string;
  readonly decision: Decision;
  readonly canDecide: boolean;
}

/** The last change while nobody has said what came of it: why, what was expected, and the two ways on. */
export function OpenDecision({ teamId, decision, canDecide }: OpenDecisionProps) {
  const { observed } = decision;
  return (
    <Stack gap="sm" maw="44rem">
      <Text>
        {formatDay(decision.decidedAt)}: “{decision.reason}”
      </Text>
      {decision.expected !== null && <ExpectedTable expected={decision.expected} />}
      {observed.fork !== null && (
        <Text>{`${texts.fork}: ${wholeInChosenUnits(observed.fork.sentence)}`}</Text>
      )}
      {observed.shock !== null && (
        <Text>{`${texts.shock}: ${wholeInChosenUnits(observed.shock.sentence)}`}</Text>
      )}
      {canDecide && <EnterOutcome teamId={teamId} decision={decision} canTakeBack />}
    </Stack>
  );
}
