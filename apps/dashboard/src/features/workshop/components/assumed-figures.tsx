import { Text } from '@mantine/core';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import { Assumed } from '../../../shared/ui/note.js';

/** What went into an answer without anybody having measured or entered it. */
export function AssumedFigures({ figures }: { figures: readonly string[] }) {
  if (figures.length === 0) return null;
  return (
    <Text size="sm">
      <Assumed /> {wholeInChosenUnits(figures.join(' · '))}
    </Text>
  );
}
