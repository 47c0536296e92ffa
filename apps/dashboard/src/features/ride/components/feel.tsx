import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { RATINGS } from '../model/choices.js';
import type { RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';

const STEPS = [1, 2, 3, 4, 5].map((value) => ({ value, label: String(value) }));

interface FeelProps {
  readonly ratings: RunValues['ratings'];
  readonly onChange: (ratings: RunValues['ratings']) => void;
}

/** How the run felt; each of the four may stay open. */
export function Feel({ ratings, onChange }: FeelProps) {
  return RATINGS.map((name) => (
    <ChoiceRow
      key={name}
      label={texts.rating[name]}
      hint={texts.feelScale}
      choices={STEPS}
      value={ratings[name]}
      onChange={(value) => onChange({ ...ratings, [name]: value })}
    />
  ));
}
