import { Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { ArmComparison, Comparison } from '../api/comparison.js';
import { texts } from '../texts.js';
import classes from './comparisons.module.css';

interface VerdictsProps {
  readonly comparison: Comparison;
  readonly labelOf: (arm: Comparison['current']) => string;
}

/** The verdict of each first, in a word; then why, and what it would take to know more. */
export function Verdicts({ comparison, labelOf }: VerdictsProps) {
  const { arms, current, marginPct, sentences } = comparison;
  return (
    <>
      {arms.length === 0 && <Text>{texts.nothing}</Text>}
      <ul className={classes.verdicts}>
        {arms.map((arm) => (
          <li key={labelOf(arm)} className={classes.verdict}>
            <Text>{texts.against(labelOf(arm), labelOf(current))}</Text>
            <strong>{arm.verdict}</strong>
            <Text maw="60ch">{arm.sentence}</Text>
            {arm.needed !== null && <Needed needed={arm.needed} marginPct={marginPct} />}
          </li>
        ))}
      </ul>
      {sentences.map((sentence) => (
        <Text key={sentence} maw="70ch">
          {sentence}
        </Text>
      ))}
    </>
  );
}

interface NeededProps {
  readonly needed: NonNullable<ArmComparison['needed']>;
  readonly marginPct: number;
}

function Needed({ needed, marginPct }: NeededProps) {
  const words = (runs: number | null) => (runs === null ? texts.tooMany : formatNumber(runs));
  return (
    <Text fw={600}>
      {texts.needed}: {words(needed.forDifference)} {texts.toFind(`${formatNumber(marginPct, 1)} %`)},{' '}
      {words(needed.forEquivalence)} {texts.toShowNone}.
    </Text>
  );
}
