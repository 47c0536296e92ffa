import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { TrackForm } from '../../features/tracks/components/track-form.js';
import { texts } from '../../features/tracks/texts.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';

const route = getRouteApi('/teams/$teamId/tracks/$trackId/change');

export function EditTrackPage() {
  const { teamId, trackId } = route.useParams();
  const navigate = useNavigate();
  const query = useQuery(tracksQuery(teamId));
  return (
    <QueryView query={query}>
      {(tracks) => {
        const track = tracks.find(({ id }) => id === trackId);
        return (
          <Page title={track?.name ?? texts.newTitle}>
            <TrackForm
              teamId={teamId}
              track={track}
              onSaved={() => void navigate({ to: '/teams/$teamId/tracks', params: { teamId } })}
            />
          </Page>
        );
      }}
    </QueryView>
  );
}
