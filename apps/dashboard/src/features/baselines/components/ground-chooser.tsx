import type { Ground } from '../../../shared/http/reads/baselines.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { GROUNDS } from '../model/ground.js';
import { texts } from '../texts.js';

interface GroundChooserProps {
  readonly ground: Ground;
  readonly onChange: (ground: Ground) => void;
}

/** The ground that forecasts and baselines are for. */
export function GroundChooser({ ground, onChange }: GroundChooserProps) {
  return (
    <div className="ll-screen-only">
      <ChoiceRow
        label={texts.ground}
        choices={GROUNDS.map((value) => ({ value, label: value }))}
        value={ground}
        onChange={onChange}
      />
    </div>
  );
}
