import { Text } from '@mantine/core';
import { formatCount } from '../../../shared/format/numbers.js';
import { isOnlyBounded, type EndBaseline } from '../../../shared/http/reads/baselines.js';
import { Warning } from '../../../shared/ui/note.js';
import { texts } from '../texts.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';

const readings = (count: number) => formatCount(count, 'reading');

/** How far the answer is known: the level in words, then what it rests on, counted. */
export function Evidence({ evidence }: { evidence: EndBaseline['evidence'] }) {
  const counts = [
    texts.ownHere(readings(evidence.ownHere)),
    texts.teamHere(readings(evidence.teamHere)),
    texts.ownElsewhere(readings(evidence.ownElsewhere)),
    texts.bounds(evidence.atLeastHere, evidence.atMostHere),
  ];
  return (
    <div>
      <Text size="sm">
        {texts.evidence}: <strong>{evidence.level}</strong>. {wholeInChosenUnits(evidence.message)}
      </Text>
      <Text size="sm" c="dimmed">
        {counts.join(' · ')}
      </Text>
      {isOnlyBounded(evidence) && <Warning word={texts.beware}>{texts.lowerBoundOnly}</Warning>}
    </div>
  );
}
