import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { texts as decisionTexts } from '../../features/decisions/texts.js';
import { pitQuery } from '../../features/pit/api/pit.js';
import { AirOfTheDay } from '../../features/pit/components/air-of-the-day.js';
import { PitNews } from '../../features/pit/components/pit-news.js';
import { PitTable } from '../../features/pit/components/pit-table.js';
import { newsOf } from '../../features/pit/model/news.js';
import { texts } from '../../features/pit/texts.js';
import { useTypedTemperature } from '../../features/ride/components/use-typed-temperature.js';
import { typedTemperature } from '../../features/ride/model/typed-temperature.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { useTeamChanges } from '../../shared/live/use-team-changes.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { ToFirstSteps } from './to-first-steps.js';

/** How often a page that hears nothing asks by itself, ms. */
const ASKED_EVERY_MS = 15_000;

const route = getRouteApi('/teams/$teamId/pit');

export function PitPage() {
  const { teamId, role } = useMembership().membership;
  const navigate = useNavigate({ from: '/teams/$teamId/pit' });
  const { trackId } = route.useSearch();
  const temperature = useTypedTemperature();
  const temperatureC = temperature.of(trackId);
  const [news, setNews] = useState<{ words: string; at: number }>();
  const line = useTeamChanges(teamId, (changes) => {
    const words = newsOf(changes, (id) => pit.data?.bikes.find(({ bikeId }) => bikeId === id)?.name);
    if (words !== null) setNews({ words, at: Date.now() });
  });
  const pit = useQuery({
    ...pitQuery(teamId, {
      ...(trackId !== undefined && { trackId }),
      ...(temperatureC !== null && { airTemperatureC: temperatureC }),
    }),
    refetchInterval: line === 'live' ? false : ASKED_EVERY_MS,
  });
  const tracks = useQuery(tracksQuery(teamId));
  const chooseTrack = (chosen: string) => void navigate({ search: { trackId: chosen }, replace: true });
  const meant = pit.data?.air?.trackId;
  const place = trackId ?? meant;
  useEffect(() => {
    // A temperature was typed for a track: as long as it is good the page is about that track.
    if (trackId === undefined && typedTemperature.read(meant, Date.now()) !== null && meant !== undefined) {
      void navigate({ search: { trackId: meant }, replace: true });
    }
  }, [meant, navigate, trackId]);
  const onTemperature = (celsius: number | null) => {
    if (place === undefined) return;
    temperature.type(place, celsius);
    chooseTrack(place);
  };
  return (
    <Page
      title={texts.title}
      lead={texts.lead}
      actions={
        <LinkButton variant="default" to="/teams/$teamId/decisions" params={{ teamId }}>
          {decisionTexts.link}
        </LinkButton>
      }
    >
      <PitNews line={line} news={news} />
      <QueryView
        query={pit}
        isEmpty={({ bikes }) => bikes.length === 0}
        empty={
          <Empty title={texts.none} action={<ToFirstSteps />}>
            {texts.noneLead}
          </Empty>
        }
      >
        {({ air, bikes }) => (
          <>
            <AirOfTheDay
              air={air}
              tracks={tracks.data ?? []}
              trackId={trackId}
              // What is remembered of the track stands in the field from its first moment.
              temperatureC={temperature.of(place)}
              onTrack={chooseTrack}
              onTemperature={onTemperature}
            />
            <PitTable teamId={teamId} bikes={bikes} canSetUp={role === 'mechanic'} />
          </>
        )}
      </QueryView>
    </Page>
  );
}
