import { inChosenUnits } from '../format/sentences.js';
import { refusalInWords } from '../http/field-errors.js';
import { ApiProblem, NoConnection } from '../http/problem.js';
import { Warning } from './note.js';
import classes from './page.module.css';
import { PlainButton } from './plain-button.js';
import { texts } from './texts.js';

interface ErrorViewProps {
  readonly error: unknown;
  readonly onRetry: () => void;
}

/** Why something could not be read, and the way to try again. */
export function ErrorView({ error, onRetry }: ErrorViewProps) {
  return (
    <div className={classes.failed}>
      <Failure error={error} word={texts.problem} />
      <PlainButton variant="default" onClick={onRetry}>
        {texts.retry}
      </PlainButton>
    </div>
  );
}

/** The reason why an act or a reading failed, in words; nothing where there is no error. */
export function Failure({ error, word = texts.notSaved }: { error: unknown; word?: string }) {
  if (error === null || error === undefined) return null;
  if (error instanceof NoConnection) {
    return (
      <Warning word={`${texts.noConnection}.`} urgent>
        {texts.noConnectionHelp}
      </Warning>
    );
  }
  if (!(error instanceof ApiProblem)) {
    return (
      <Warning word={`${word}.`} urgent>
        {texts.unexpected}
      </Warning>
    );
  }
  return (
    <Warning word={`${word}: ${error.title}.`} urgent>
      {inChosenUnits(refusalInWords(error))}
      {error.status >= 500 && error.requestId !== null && (
        <div className={classes.small}>{texts.loggedUnder(error.requestId)}</div>
      )}
    </Warning>
  );
}
