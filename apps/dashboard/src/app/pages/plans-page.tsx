import { Text } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { plansQuery } from '../../features/test-plans/api/plans.js';
import { PlanList } from '../../features/test-plans/components/plan-list.js';
import { texts } from '../../features/test-plans/texts.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { joined } from '../../shared/http/joined.js';
import { LinkButton } from '../../shared/ui/link.js';
import { More } from '../../shared/ui/more.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

const route = getRouteApi('/teams/$teamId/test-plans');

/** Every plan of the team, or of one track: those that are open first. */
export function PlansPage() {
  const { teamId, role } = useMembership().membership;
  const { trackId } = route.useSearch();
  const tracks = useQuery(tracksQuery(teamId));
  const riders = useQuery(ridersQuery(teamId));
  const nameIn = (things: readonly { id: string; name: string }[] | undefined) => (id: string) =>
    things?.find((thing) => thing.id === id)?.name ?? '';
  const names = { trackName: nameIn(tracks.data), riderName: nameIn(riders.data) };
  const search = trackId === undefined ? {} : { trackId };
  const filters = { open: { state: 'open', ...search }, closed: { state: 'closed', ...search } } as const;
  const open = useInfiniteQuery(plansQuery(teamId, filters.open));
  const closed = useInfiniteQuery(plansQuery(teamId, filters.closed));
  // Both lists at once: the second would be pushed away by the first.
  const both = joined([open, closed], () => ({ ofOpen: open.data ?? [], ofClosed: closed.data ?? [] }));
  return (
    <Page
      title={trackId === undefined ? texts.title : `${texts.title}: ${names.trackName(trackId)}`}
      lead={texts.lead}
      actions={
        role !== 'rider' && (
          <>
            <LinkButton to="/teams/$teamId/test-plans/new" params={{ teamId }} search={search}>
              {texts.plan}
            </LinkButton>
            <LinkButton variant="default" to="/teams/$teamId/comparison" params={{ teamId }} search={search}>
              {texts.compare}
            </LinkButton>
          </>
        )
      }
    >
      <QueryView query={both}>
        {({ ofOpen, ofClosed }) => (
          <>
            <Section title={texts.open}>
              {ofOpen.length === 0 ? (
                <Text maw="60ch">{texts.noneOpen}</Text>
              ) : (
                <PlanList teamId={teamId} plans={ofOpen} {...names} />
              )}
              <More query={open} label={texts.more} />
            </Section>
            <Section title={texts.closed}>
              {ofClosed.length === 0 ? (
                <Text maw="60ch">{texts.noneClosed}</Text>
              ) : (
                <PlanList teamId={teamId} plans={ofClosed} {...names} />
              )}
              <More query={closed} label={texts.more} />
            </Section>
          </>
        )}
      </QueryView>
    </Page>
  );
}
