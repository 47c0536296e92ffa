import { Text } from '@mantine/core';
import type { Plan } from '../api/plans.js';
import { setupWords } from '../model/set-up-words.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface PlanArmsProps {
  readonly plan: Plan;
  readonly bikeName: (id: string) => string;
  /** Set-ups of the bikes as far as they are read. */
  readonly setups: readonly Setup[];
}

/** What each letter stands for, on each bike. */
export function PlanArms({ plan, bikeName, setups }: PlanArmsProps) {
  if (plan.arms.every(({ name }) => name === null)) return <Text>{texts.hiddenSetups}</Text>;
  return (
    <ul className={classes.list}>
      {plan.arms.map((arm) => (
        <li key={arm.letter}>
          <div>
            <Text fw={600}>
              {arm.letter} · {arm.name}
              {arm.current === true && ` (${texts.current})`}
            </Text>
            {arm.setups.map(({ bikeId, setupId }) => {
              const setup = setups.find(({ id }) => id === setupId);
              return (
                <Text key={bikeId} size="sm">
                  {bikeName(bikeId)}
                  {setup !== undefined && `: ${texts.revision(setup.revision)}, ${setupWords(setup)}`}
                </Text>
              );
            })}
          </div>
        </li>
      ))}
    </ul>
  );
}
