import { Text } from '@mantine/core';
import type { Comparison } from '../api/comparison.js';
import { texts } from '../texts.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import classes from './comparisons.module.css';

interface VerdictsProps {
  readonly comparison: Comparison;
  readonly labelOf: (arm: Comparison['current']) => string;
}

/** The verdict of each first, in a word; then why, and how many runs it would take to know more. */
export function Verdicts({ comparison, labelOf }: VerdictsProps) {
  const { arms, current, sentences } = comparison;
  return (
    <>
      {arms.length === 0 && <Text>{texts.nothing}</Text>}
      <ul className={classes.verdicts}>
        {arms.map((arm) => (
          <li key={labelOf(arm)} className={classes.verdict}>
            <Text>{texts.against(labelOf(arm), labelOf(current))}</Text>
            <strong>{arm.verdict}</strong>
            <Text maw="60ch">{wholeInChosenUnits(arm.sentence)}</Text>
          </li>
        ))}
      </ul>
      {sentences.map((sentence) => (
        <Text key={sentence} maw="70ch">
          {wholeInChosenUnits(sentence)}
        </Text>
      ))}
    </>
  );
}
