import { Button } from '@mantine/core';
import { Failure } from '../../../shared/ui/error-view.js';
import { Warning } from '../../../shared/ui/note.js';
import { useOrderRest } from '../api/ride-plan.js';
import { texts } from '../texts.js';

interface OrderRestProps {
  readonly teamId: string;
  readonly planId: string;
  readonly riderId: string;
}

/** Where a run was voided, or counts again, outside of the plan: the way to an order that is right again. */
export function OrderRest({ teamId, planId, riderId }: OrderRestProps) {
  const order = useOrderRest(teamId, planId);
  return (
    <>
      <Warning word={texts.stale}>{texts.staleLead}</Warning>
      <Failure error={order.error} />
      <div>
        <Button loading={order.isPending} onClick={() => order.mutate(riderId)}>
          {texts.orderRest}
        </Button>
      </div>
    </>
  );
}
