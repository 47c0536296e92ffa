import { Button, Group, Text } from '@mantine/core';
import { useNavigate } from '@tanstack/react-router';
import { Failure } from '../../../shared/ui/error-view.js';
import { TextLink } from '../../../shared/ui/link.js';
import { useMakeWorkOrder, type WorkOrder } from '../api/work-orders.js';
import { texts } from '../texts.js';
import classes from './work-orders.module.css';

interface BikeWorkProps {
  readonly teamId: string;
  readonly orders: readonly WorkOrder[];
  /** The set-up that the bike is to have. */
  readonly setupId: string;
  readonly canMake: boolean;
  /** The set-up is being read again, and may be another in a moment: no order is made for an old one. */
  readonly isReading: boolean;
}

/** The work orders of a bike, and the one for its set-up now where there is none yet. */
export function BikeWork({ teamId, orders, setupId, canMake, isReading }: BikeWorkProps) {
  const navigate = useNavigate();
  const make = useMakeWorkOrder(teamId);
  const isMade = orders.some(({ to }) => to.id === setupId);
  const open = (orderId: string) =>
    void navigate({ to: '/teams/$teamId/work-orders/$orderId', params: { teamId, orderId } });
  return (
    <>
      <Text c="dimmed">{texts.sectionLead}</Text>
      {orders.length === 0 ? (
        <Text>{texts.none}</Text>
      ) : (
        <ul className={classes.orders}>
          {orders.map(({ id, state, steps, to }) => (
            <li key={id}>
              <TextLink to="/teams/$teamId/work-orders/$orderId" params={{ teamId, orderId: id }}>
                {texts.line(
                  to.revision,
                  texts.state[state],
                  texts.progress(steps.filter(({ doneAt }) => doneAt !== null).length, steps.length),
                )}
              </TextLink>
            </li>
          ))}
        </ul>
      )}
      {canMake && !isMade && (
        <>
          <Group>
            <Button
              variant="default"
              loading={make.isPending || isReading}
              onClick={() => make.mutate(setupId, { onSuccess: ({ id }) => open(id) })}
            >
              {texts.make}
            </Button>
          </Group>
          <Failure error={make.error} />
        </>
      )}
    </>
  );
}
