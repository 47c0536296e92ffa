import { BikeList } from '../../features/bikes/components/bike-list.js';
import { texts } from '../../features/bikes/texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { useMembership } from '../use-membership.js';

export function TeamBikesPage() {
  const { teamId, role } = useMembership().membership;
  const fleet = useFleet(teamId);
  const canChange = role === 'mechanic';
  const add = canChange && (
    <LinkButton to="/teams/$teamId/team/bikes/$bikeId" params={{ teamId, bikeId: 'new' }}>
      {texts.add}
    </LinkButton>
  );
  return (
    <Page title={texts.title} actions={add}>
      <QueryView
        query={fleet}
        isEmpty={({ bikes }) => bikes.length === 0}
        empty={
          <Empty title={texts.none} action={add}>
            {texts.noneLead}
          </Empty>
        }
      >
        {({ bikes, riderName, unitName }) => (
          <BikeList
            teamId={teamId}
            bikes={bikes}
            riderName={riderName}
            unitName={unitName}
            canChange={canChange}
          />
        )}
      </QueryView>
    </Page>
  );
}
