import { Text, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import { setupChanges } from '../../../shared/format/setup-changes.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { EndFigures } from '../../../shared/ui/end-figures.js';
import type { Plan, PlannedRun } from '../api/plans.js';
import { orderOf, setupOfArm } from '../model/order.js';
import { setupWords } from '../model/set-up-words.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface NextRunProps {
  readonly plan: Plan;
  readonly next: PlannedRun;
  readonly bikeId: string;
  /** Set-ups of the bike; empty where they are hidden, or not on a phone without signal. */
  readonly setups: readonly Setup[];
  /** Where the run is logged. */
  readonly children: ReactNode;
}

/** What to ride next, readable at arm's length: the letter, what to set, and what to change for it. */
export function NextRun({ plan, next, bikeId, setups, children }: NextRunProps) {
  const arm = plan.arms.find(({ letter }) => letter === next.letter);
  const last = orderOf(plan, next.riderId).findLast(({ run }) => run.runId !== null)?.run;
  const setupOf = (letter: string) => {
    const id = setupOfArm(plan, letter, bikeId);
    return setups.find((setup) => setup.id === id);
  };
  const isHidden = setupOfArm(plan, next.letter, bikeId) === null;
  const setup = setupOf(next.letter);
  const before = last === undefined ? undefined : setupOf(last.letter);
  const changes = setup === undefined || before === undefined ? undefined : setupChanges(before, setup);
  return (
    <>
      <div className={classes.next}>
        <span className={classes.letter}>{next.letter}</span>
        <div>
          {arm?.name !== null && (
            <Text fw={600} size="lg">
              {arm?.name}
            </Text>
          )}
          <Text>{texts.kind[next.kind]}</Text>
        </div>
      </div>
      {setup === undefined ? (
        <Text>{isHidden ? texts.mechanicSets : texts.figuresNotHere}</Text>
      ) : (
        <>
          {changes !== undefined && (
            <Text size="lg">
              {changes.length === 0 ? texts.nothingToChange : `${texts.changeFrom}: ${changes.join('; ')}`}
            </Text>
          )}
          <div className={classes.ends} role="group" aria-label={`${texts.set}: ${setupWords(setup)}`}>
            <div>
              <Title order={3}>{texts.fork}</Title>
              <EndFigures end={setup.fork} big />
            </div>
            {setup.shock !== null && (
              <div>
                <Title order={3}>{texts.shock}</Title>
                <EndFigures end={setup.shock} big />
              </div>
            )}
          </div>
        </>
      )}
      <div className="ll-screen-only">{children}</div>
    </>
  );
}
