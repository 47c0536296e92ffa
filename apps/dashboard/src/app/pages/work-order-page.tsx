import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { workOrderQuery } from '../../features/work-orders/api/work-orders.js';
import { OrderSheet } from '../../features/work-orders/components/order-sheet.js';
import { texts } from '../../features/work-orders/texts.js';
import { formatMoment } from '../../shared/format/time.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery } from '../../shared/http/reads/bikes.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/work-orders/$orderId');

/** One work order, on the screen and on paper. */
export function WorkOrderPage() {
  const { teamId, orderId } = route.useParams();
  const { role } = useMembership().membership;
  const order = useQuery(workOrderQuery(teamId, orderId));
  const bikes = useQuery(bikesQuery(teamId));
  return (
    <QueryView query={joined([order, bikes], () => order.data)} page={texts.section}>
      {(read) =>
        read !== undefined && (
          <Page
            title={texts.title(bikes.data?.find(({ id }) => id === read.bikeId)?.name ?? '')}
            lead={
              <>
                {texts.lead(formatMoment(read.madeAt), read.madeByName, read.to.revision)}{' '}
                <strong>{texts.state[read.state]}</strong>
              </>
            }
            actions={
              <>
                <Button variant="default" onClick={() => window.print()}>
                  {texts.print}
                </Button>
                <LinkButton
                  variant="default"
                  to="/teams/$teamId/bikes/$bikeId"
                  params={{ teamId, bikeId: read.bikeId }}
                >
                  {texts.toBike}
                </LinkButton>
              </>
            }
          >
            <OrderSheet teamId={teamId} order={read} canTick={role === 'mechanic'} />
          </Page>
        )
      }
    </QueryView>
  );
}
