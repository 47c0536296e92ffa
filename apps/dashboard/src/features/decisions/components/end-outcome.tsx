import { Text, Title } from '@mantine/core';
import { formatNumber, formatShare } from '../../../shared/format/numbers.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { WarningMark } from '../../../shared/ui/note.js';
import type { StrokeMarks } from '../../../shared/ui/stroke-bar/layout.js';
import { StrokeBar } from '../../../shared/ui/stroke-bar/stroke-bar.js';
import { texts } from '../texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import classes from './decisions.module.css';

type Expected = NonNullable<Decision['expected']>['fork'];
type Observed = Decision['observed']['fork'];

interface EndOutcomeProps {
  readonly name: string;
  readonly unit: SpringUnit | undefined;
  readonly expected: Expected;
  readonly observed: Observed;
}

/** One end, to scale: what was expected of it above what the rings showed, and the sentence about both. */
export function EndOutcome({ name, unit, expected, observed }: EndOutcomeProps) {
  if (unit === undefined || (expected === null && observed === null)) return null;
  const stroke = { strokeMm: unit.strokeMm, bumperStartMm: unit.strokeMm - unit.bumperLengthMm };
  return (
    <div role="group" className={classes.end} aria-label={name}>
      <Title order={4}>{name}</Title>
      {expected !== null && (
        <StrokeBar
          title={`${name} ${texts.expected}, ${riskText(expected)}`}
          {...expectedMarks(stroke, expected)}
        />
      )}
      {observed !== null && observed.readings > 0 && (
        <StrokeBar
          title={`${name} ${texts.observed}`}
          {...stroke}
          medianHitMm={observed.medianTravelMm ?? undefined}
          mostUsedMm={observed.mostTravelMm ?? undefined}
        />
      )}
      {observed !== null && (
        <Text>
          {isSurprising(observed) ? (
            <WarningMark>{wholeInChosenUnits(observed.sentence)}</WarningMark>
          ) : (
            wholeInChosenUnits(observed.sentence)
          )}
        </Text>
      )}
    </div>
  );
}

const PER_CENT = 100;

const riskText = ({ sagPct, riskPct }: NonNullable<Expected>): string => {
  const sag = `${texts.sag} ${withUnit(formatNumber(sagPct, 1), '%')}`;
  return riskPct === null ? sag : `${sag}, ${texts.risk} ${formatShare(riskPct / PER_CENT)}`;
};

const expectedMarks = (stroke: StrokeMarks, expected: NonNullable<Expected>): StrokeMarks => ({
  ...stroke,
  sagMm: (expected.sagPct / PER_CENT) * stroke.strokeMm,
  medianHitMm: expected.medianTravelMm ?? undefined,
  ...(expected.travel95Mm !== null && { highHit: { mm: expected.travel95Mm } }),
});

/** What somebody should look at: travel that differs, either way. */
const isSurprising = ({ verdict }: NonNullable<Observed>) =>
  verdict === 'more travel' || verdict === 'less travel';
