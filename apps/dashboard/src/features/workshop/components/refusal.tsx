import { figureName } from '../../../shared/format/figure-names.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import { ApiProblem } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Warning } from '../../../shared/ui/note.js';

const texts = {
  word: 'Not worked out.',
  failed: 'Not worked out',
  marked: 'A marked field says what is allowed there.',
  ofUnit: 'A figure of the unit itself stands in the way. Change it with the unit.',
};

/** Fields of a question that the unit answers, not the form. */
const OF_UNIT: readonly string[] = ['spacerVolumeMl', 'shaftAreaMm2', 'transferPositionMm'];

/** Why nothing was worked out: the fields say it themselves where they are in sight. */
export function Refusal({ error }: { error: unknown }) {
  if (!(error instanceof ApiProblem) || error.fields.length === 0) {
    return <Failure error={error} word={texts.failed} />;
  }
  const ofUnit = error.fields.filter(({ field }) => OF_UNIT.includes(field));
  return (
    <Warning word={texts.word} urgent>
      {ofUnit.length === 0 ? texts.marked : texts.ofUnit}
      {ofUnit.map(
        ({ field, allowed }) => ` ${figureName(field).label} must be ${wholeInChosenUnits(allowed)}.`,
      )}
    </Warning>
  );
}
