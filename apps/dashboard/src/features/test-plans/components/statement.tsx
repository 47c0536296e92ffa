import { Text } from '@mantine/core';
import classes from './plans.module.css';
import { texts } from '../texts.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';

interface StatementProps {
  /** The first is read first. */
  readonly words: readonly string[];
  /** One level down: how it was reckoned. */
  readonly reckoned: readonly string[];
}

/** What a plan can tell, in words. */
export function Statement({ words, reckoned }: StatementProps) {
  return (
    <>
      <div className={classes.statement}>
        {words.map((sentence) => (
          <p key={sentence}>{wholeInChosenUnits(sentence)}</p>
        ))}
      </div>
      <details>
        <summary>{texts.reckoned}</summary>
        {reckoned.map((sentence) => (
          <Text key={sentence} size="sm">
            {wholeInChosenUnits(sentence)}
          </Text>
        ))}
      </details>
    </>
  );
}
