import { useQuery } from '@tanstack/react-query';
import { TrackList } from '../../features/tracks/components/track-list.js';
import { texts } from '../../features/tracks/texts.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function TracksPage() {
  const { teamId, role } = useMembership().membership;
  const query = useQuery(tracksQuery(teamId));
  const add = role !== 'rider' && (
    <LinkButton to="/teams/$teamId/tracks/$trackId/change" params={{ teamId, trackId: 'new' }}>
      {texts.add}
    </LinkButton>
  );
  return (
    <Page title={texts.title} actions={add}>
      <QueryView
        query={query}
        isEmpty={(tracks) => tracks.length === 0}
        empty={
          <Empty title={texts.none} action={add}>
            {texts.noneLead}
          </Empty>
        }
      >
        {(tracks) => <TrackList teamId={teamId} tracks={tracks} />}
      </QueryView>
    </Page>
  );
}
