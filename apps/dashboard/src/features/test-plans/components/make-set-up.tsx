import { Text } from '@mantine/core';
import { TextLink } from '../../../shared/ui/link.js';
import { Section } from '../../../shared/ui/page.js';
import type { Plan } from '../api/plans.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface MakeSetUpProps {
  readonly teamId: string;
  readonly plan: Plan;
  /** The bikes that who looks may set up. */
  readonly bikes: readonly { readonly id: string; readonly name: string }[];
}

/** From what a closed plan told to a bike's next set-up: one way for each set-up and bike, the plan goes along. */
export function MakeSetUp({ teamId, plan, bikes }: MakeSetUpProps) {
  const ways = plan.arms.flatMap(({ letter, name, setups }) =>
    setups.flatMap(({ bikeId, setupId }) => {
      const bike = bikes.find(({ id }) => id === bikeId);
      return bike === undefined ? [] : [{ letter, name, bike, setupId }];
    }),
  );
  if (plan.closedAt === null || ways.length === 0) return null;
  return (
    <Section title={texts.makeSetUp}>
      <Text size="sm" c="dimmed">
        {texts.makeSetUpLead}
      </Text>
      <ul className={classes.list}>
        {ways.map(({ letter, name, bike, setupId }) => (
          <li key={`${letter} ${bike.id}`}>
            <TextLink
              to="/teams/$teamId/bikes/$bikeId/new-set-up"
              params={{ teamId, bikeId: bike.id }}
              search={{ setupId, testPlanId: plan.id, trackId: plan.trackId }}
            >
              {texts.makeSetUpOf(`${letter} · ${name ?? ''}`, bike.name)}
            </TextLink>
          </li>
        ))}
      </ul>
    </Section>
  );
}
