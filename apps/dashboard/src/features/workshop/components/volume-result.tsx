import { Text } from '@mantine/core';
import { formatNumber, formatShare } from '../../../shared/format/numbers.js';
import { Warning } from '../../../shared/ui/note.js';
import type { VolumeAnswer } from '../api/identify-volume.js';
import { ASSUMED_TEXTS, BETTER_TEXTS, REFUSAL_TEXTS, SOURCE_TEXTS, texts } from '../measure-texts.js';
import { limitOf, ninetyPercent } from '../model/interval.js';
import { AssumedFigures } from './assumed-figures.js';
import classes from './workshop.module.css';

const PER_CENT = 100;
/** Above this scatter, in what was entered for the readings, something moved, leaked or cooled. */
const LARGEST_SCATTER = 2;

interface VolumeResultProps {
  readonly answer: VolumeAnswer;
  /** Figures of the unit behind it that nobody has measured or entered. */
  readonly ofUnit: readonly string[];
}

/** The positive volume with how sure it is and what limits it; or why the readings do not tell it. */
export function VolumeResult({ answer, ofUnit }: VolumeResultProps) {
  return (
    <>
      {answer.positiveVolumeMl !== null && answer.sdMl !== null ? (
        <Identified answer={answer} volume={answer.positiveVolumeMl} sd={answer.sdMl} />
      ) : (
        <Refused answer={answer} />
      )}
      <AssumedFigures figures={[...ofUnit, ...countedAssumptions(answer)]} />
    </>
  );
}

/** What the service assumed; nothing is said of spacers where none enter. */
function countedAssumptions({ assumed, shares }: VolumeAnswer): string[] {
  const hasSpacers = shares.some(({ of, sharePct }) => of === 'spacerVolume' && sharePct > 0);
  return assumed
    .filter((name) => hasSpacers || name !== 'spacerVolumeSdPct')
    .flatMap((name) => ASSUMED_TEXTS[name] ?? []);
}

function Identified({ answer, volume, sd }: { answer: VolumeAnswer; volume: number; sd: number }) {
  const { lower, upper } = ninetyPercent(volume, sd);
  const limit = limitOf(answer);
  const [greatest] = answer.shares;
  return (
    <>
      <div>
        <div className={classes.answer}>
          {formatNumber(volume)} <small>mL</small>
        </div>
        <Text>
          {texts.between(formatNumber(lower), formatNumber(upper))} {texts.positiveHint}
        </Text>
      </div>
      {limit !== null && greatest !== undefined && (
        <Text>
          {texts.limited(SOURCE_TEXTS[limit], formatShare(greatest.sharePct / PER_CENT))}{' '}
          {BETTER_TEXTS[limit]}
        </Text>
      )}
      {answer.scatter !== null && answer.scatter > LARGEST_SCATTER && (
        <Warning word={texts.scatterWord}>{texts.scatter(formatNumber(answer.scatter, 1))}</Warning>
      )}
      <details>
        <summary>{texts.allShares}</summary>
        <table className={classes.table}>
          <thead>
            <tr>
              <th scope="col">{texts.source}</th>
              <th scope="col">{texts.share}</th>
            </tr>
          </thead>
          <tbody>
            {answer.shares.map(({ of, sharePct }) => (
              <tr key={of}>
                <th scope="row">{SOURCE_TEXTS[of]}</th>
                <td>{formatShare(sharePct / PER_CENT)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
}

function Refused({ answer }: { answer: VolumeAnswer }) {
  const limit = limitOf(answer);
  return (
    <Warning word={texts.refusedWord}>
      {answer.reason !== null && REFUSAL_TEXTS[answer.reason]}
      {answer.relativeSdPct !== null && ` ${texts.onlyKnownTo(formatNumber(answer.relativeSdPct, 1))}`}
      {limit !== null && ` ${texts.limitedBy(SOURCE_TEXTS[limit])} ${BETTER_TEXTS[limit]}`}
    </Warning>
  );
}
