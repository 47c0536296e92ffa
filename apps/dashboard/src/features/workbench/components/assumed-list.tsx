import { List, Text } from '@mantine/core';
import { figureName } from '../../../shared/format/figure-names.js';
import { numberText } from '../../../shared/format/parse.js';
import { AssumedLink } from '../../../shared/ui/assumed-link.js';
import type { BikeEnd, BikeEnds } from '../api/bike-ends.js';
import { texts } from '../texts.js';

interface AssumedListProps {
  readonly teamId: string;
  readonly end: BikeEnd;
  readonly braking: BikeEnds['braking'];
  /** Whether who looks may change the team's figures. */
  readonly canChange: boolean;
}

/** Every figure behind the answers that nobody has measured or entered: always in sight, and where to change it. */
export function AssumedList({ teamId, end, braking, canChange }: AssumedListProps) {
  const isFork = end.headAngleDeg !== null;
  const assumedBraking = isFork
    ? braking.assumed.filter((field) => end.assumed.every((input) => input.field !== field))
    : [];
  return (
    <>
      {end.assumed.length + assumedBraking.length === 0 ? (
        <Text>{texts.nothingAssumed}</Text>
      ) : (
        <List>
          {end.assumed.map((input) => (
            <List.Item key={`${input.of} ${input.field}`}>
              {figureName(input.field).label} {numberText(input.value)} {figureName(input.field).unit}
              {canChange && <AssumedLink teamId={teamId} input={input} />}
            </List.Item>
          ))}
          {assumedBraking.map((field) => (
            <List.Item key={field}>{texts.assumedBraking(figureName(field).label)}</List.Item>
          ))}
        </List>
      )}
      {isFork && (
        <Text size="sm" c="dimmed">
          {texts.braking}
        </Text>
      )}
    </>
  );
}
