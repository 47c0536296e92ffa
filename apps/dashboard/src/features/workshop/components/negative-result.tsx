import { Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import { Warning } from '../../../shared/ui/note.js';
import type { NegativeVolumeAnswer } from '../api/identify-negative-volume.js';
import { ASSUMED_TEXTS, NEGATIVE_REFUSAL_TEXTS, texts } from '../measure-texts.js';
import { ninetyPercent } from '../model/interval.js';
import { AssumedFigures } from './assumed-figures.js';
import classes from './workshop.module.css';

interface NegativeResultProps {
  readonly answer: NegativeVolumeAnswer;
  /** Figures of the unit behind it that nobody has measured or entered. */
  readonly ofUnit: readonly string[];
}

/** The negative volume with how sure it is; or why the readings do not tell it. */
export function NegativeResult({ answer, ofUnit }: NegativeResultProps) {
  const { negativeVolumeMl, sdMl, reason, assumed } = answer;
  return (
    <>
      {negativeVolumeMl !== null && sdMl !== null ? (
        <Identified volume={negativeVolumeMl} sd={sdMl} />
      ) : (
        <Warning word={texts.negativeRefused}>{reason !== null && NEGATIVE_REFUSAL_TEXTS[reason]}</Warning>
      )}
      <AssumedFigures figures={[...ofUnit, ...assumed.flatMap((name) => ASSUMED_TEXTS[name] ?? [])]} />
    </>
  );
}

function Identified({ volume, sd }: { volume: number; sd: number }) {
  const { lower, upper } = ninetyPercent(volume, sd);
  return (
    <div>
      <div className={classes.answer}>
        {formatNumber(volume, 1)} <small>mL</small>
      </div>
      <Text>
        {texts.between(formatNumber(lower, 1), formatNumber(upper, 1))} {texts.negativeHint}
      </Text>
    </div>
  );
}
