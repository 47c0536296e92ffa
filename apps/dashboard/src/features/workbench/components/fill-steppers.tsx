import { Button, Group, Text } from '@mantine/core';
import { useState } from 'react';
import { pressureRangeText } from '../../../shared/format/quantities.js';
import { formatCount, formatNumber, formatPressure } from '../../../shared/format/numbers.js';
import { numberText } from '../../../shared/format/parse.js';
import { shownLimit, storedText } from '../../../shared/format/entry.js';
import { shownUnit } from '../../../shared/format/units.js';
import { TextLink } from '../../../shared/ui/link.js';
import { Warning } from '../../../shared/ui/note.js';
import type { Bench, Proposed } from '../model/bench.js';
import type { FillField } from '../model/fill.js';
import { hasAllLimits, type Limits } from '../model/limits.js';
import { ANY_UNIT, AS_NOW, stepFrom, type Problem, type Proposal } from '../model/proposal.js';
import { PROBLEMS, texts } from '../texts.js';
import { Stepper } from './stepper.js';
import classes from './workbench.module.css';

interface FillSteppersProps {
  readonly teamId: string;
  readonly bench: Bench;
  readonly proposal: Proposal;
  readonly proposed: Proposed;
  /** What the API has refused of this end, by field. */
  readonly refused: Readonly<Partial<Record<FillField, string>>>;
  readonly onPropose: (proposal: Proposal) => void;
}

/** Pressure and spacers of one end, and what limits them. */
export function FillSteppers({ teamId, bench, proposal, proposed, refused, onPropose }: FillSteppersProps) {
  // A press that a limit refuses moves nothing; the reason stays until the next one.
  const [blocked, setBlocked] = useState<{ field: FillField; problem: Problem } | null>(null);
  const { end, limits, now } = bench;
  const shown = (field: FillField) => proposal[field] ?? storedText(now.fill[field]);
  const change = (field: FillField, text: string) => {
    setBlocked(null);
    onPropose({ ...proposal, [field]: text });
  };
  const step = (field: FillField, by: 1 | -1) => {
    const from = proposed.view?.fill[field] ?? Number(shown(field).replace(',', '.'));
    const taken = stepFrom(field, Number.isFinite(from) ? from : now.fill[field], by, limits);
    if ('to' in taken) change(field, storedText(taken.to));
    else setBlocked({ field, problem: taken.refused });
  };
  const problemOf = (field: FillField) => {
    const problem = blocked?.field === field ? blocked.problem : proposed.problems[field];
    if (problem === undefined) return refused[field];
    return PROBLEMS[problem](field, end.unitName, boundText(field, problem, limits));
  };
  const stepper = (field: FillField) => ({
    value: shown(field),
    problem: problemOf(field),
    onType: (text: string) => change(field, text),
    onStep: (by: 1 | -1) => step(field, by),
  });
  return (
    <div className={classes.controls}>
      <div className={classes.steppers}>
        <Stepper
          label={texts.pressure}
          unit="psi"
          whole={false}
          hint={texts.nowIs(formatPressure(now.fill.pressurePsi))}
          {...stepper('pressurePsi')}
        />
        <Stepper
          label={texts.spacers}
          whole
          hint={texts.nowIs(formatNumber(now.fill.spacers))}
          {...stepper('spacers')}
        />
      </div>
      {hasAllLimits(end.limits) ? (
        <Text size="sm" c="dimmed">
          {texts.limits(
            pressureRangeText(end.limits.minPressurePsi, end.limits.maxPressurePsi),
            formatCount(end.limits.maxSpacers ?? 0, 'spacer'),
          )}
        </Text>
      ) : (
        <Warning word={texts.noLimitsWord}>
          {texts.noLimits}{' '}
          <TextLink to="/teams/$teamId/team/spring-units/$unitId" params={{ teamId, unitId: end.unitId }}>
            {texts.enterLimits}
          </TextLink>
        </Warning>
      )}
      <Group className="ll-screen-only">
        <Button
          variant="default"
          // Always there, so that the first press moves nothing from under the eye.
          disabled={proposal.pressurePsi === null && proposal.spacers === null}
          onClick={() => {
            setBlocked(null);
            onPropose(AS_NOW);
          }}
        >
          {texts.backToNow}
        </Button>
      </Group>
    </div>
  );
}

/** The limit that stands in the way, as it is shown. */
function boundText(field: FillField, problem: Problem, limits: Limits): string {
  if (field === 'spacers') return numberText(limits.spacers.most);
  if (problem === 'beyond any unit') {
    return pressureRangeText(ANY_UNIT.pressurePsi.least, ANY_UNIT.pressurePsi.most);
  }
  const side = problem === 'below the limit' ? 'least' : 'most';
  return `${shownLimit('psi', limits.pressurePsi[side] ?? 0, side)} ${shownUnit('psi')}`;
}
