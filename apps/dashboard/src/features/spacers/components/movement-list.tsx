import { Text } from '@mantine/core';
import { formatChange, formatNumber } from '../../../shared/format/numbers.js';
import { formatMoment } from '../../../shared/format/time.js';
import { AskWhy } from '../../../shared/ui/form/ask-why.js';
import { RecordList, RecordRow } from '../../../shared/ui/record-list.js';
import { useReverseMovement, type SpacerMovement } from '../api/spacers.js';
import { texts } from '../texts.js';

interface MovementListProps {
  readonly teamId: string;
  readonly movements: readonly SpacerMovement[];
  readonly canChange: boolean;
}

const nameOf = ({ reason, unitKind, spacerVolumeMl, change }: SpacerMovement) =>
  texts.movement(
    texts.reason[reason],
    texts.sizeOf(unitKind, formatNumber(spacerVolumeMl, 1)),
    formatChange(change),
  );

/** What was recorded, newest first; what was reversed is struck out and stays. */
export function MovementList({ teamId, movements, canChange }: MovementListProps) {
  return (
    <RecordList>
      {movements.map((movement) => (
        <RecordRow
          key={movement.id}
          name={nameOf(movement)}
          isGone={movement.isReversed}
          act={
            canChange &&
            !movement.isReversed &&
            movement.reversesId === null && <Reverse teamId={teamId} movement={movement} />
          }
        >
          <Text size="sm" c="dimmed">
            {formatMoment(movement.enteredAt)} · {texts.after(formatNumber(movement.inStock))}
            {movement.isReversed && ` · ${texts.reversed}`}
          </Text>
          {movement.note !== '' && <Text>“{movement.note}”</Text>}
        </RecordRow>
      ))}
    </RecordList>
  );
}

function Reverse({ teamId, movement }: { teamId: string; movement: SpacerMovement }) {
  const reverse = useReverseMovement(teamId, movement.id);
  return (
    <AskWhy
      label={texts.reverse}
      fullLabel={texts.reverseOf(nameOf(movement))}
      lead={texts.reverseLead}
      why={texts.why}
      field="note"
      error={reverse.error}
      isPending={reverse.isPending}
      onSure={(note, done) => reverse.mutate(note, { onSuccess: done })}
    />
  );
}
