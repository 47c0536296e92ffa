import { NativeSelect, Text } from '@mantine/core';
import { keepPreviousData, useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useCallback } from 'react';
import { bikeEndsQuery } from '../../features/workbench/api/bike-ends.js';
import { NotSetUp } from '../../features/workbench/components/end-panel.js';
import { Workbench, type End } from '../../features/workbench/components/workbench.js';
import { rememberedTrack, rememberTrack } from '../../features/workbench/model/remembered-track.js';
import { texts } from '../../features/workbench/texts.js';
import { joined } from '../../shared/http/joined.js';
import { keys } from '../../shared/http/keys.js';
import type { Bike } from '../../shared/http/reads/bikes.js';
import { useFleet, type Fleet } from '../../shared/http/reads/fleet.js';
import { currentSetupsQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery, type Track } from '../../shared/http/reads/tracks.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import classes from './my-bike-page.module.css';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/bikes/$bikeId/workbench');

export function WorkbenchPage() {
  const { teamId, bikeId } = route.useParams();
  const fleet = useFleet(teamId);
  const tracks = useQuery(tracksQuery(teamId));
  const place = joined([fleet, tracks], () => ({ fleet: fleet.data, tracks: tracks.data ?? [] }));
  return (
    <QueryView query={place}>
      {({ fleet: team, tracks: all }) => {
        const bike = team?.bikes.find(({ id }) => id === bikeId);
        if (team === undefined || bike === undefined) return <NotFoundPage />;
        return <OneBike key={bike.id} teamId={teamId} fleet={team} bike={bike} tracks={all} />;
      }}
    </QueryView>
  );
}

interface OneBikeProps {
  readonly teamId: string;
  readonly fleet: Fleet;
  readonly bike: Bike;
  readonly tracks: readonly Track[];
}

/** The track in the address, else the one looked at last, else the first. */
function chooseTrack(tracks: readonly Track[], teamId: string, inAddress: string | undefined) {
  const find = (id: string | undefined) => tracks.find((track) => track.id === id);
  return find(inAddress) ?? find(rememberedTrack(teamId)) ?? tracks[0];
}

function OneBike({ teamId, fleet, bike, tracks }: OneBikeProps) {
  const search = route.useSearch();
  const queries = useQueryClient();
  const navigate = useNavigate({ from: '/teams/$teamId/bikes/$bikeId/workbench' });
  const track = chooseTrack(tracks, teamId, search.trackId);
  const trackId = track?.id;
  const { role } = useMembership().membership;
  const setups = useQuery(currentSetupsQuery(teamId, bike.id));
  // While another track is read, the figures of the last one stay, and with them what is proposed.
  const ends = useQuery({ ...bikeEndsQuery(teamId, bike.id, trackId), placeholderData: keepPreviousData });
  const state = joined([ends, setups], () => ({ ends: ends.data, setups: setups.data ?? [] }));
  const lookAgain = useCallback(
    () => void queries.invalidateQueries({ queryKey: keys.setups(teamId) }),
    [queries, teamId],
  );
  const choose = (change: { end?: End; trackId?: string }) =>
    void navigate({ search: (before) => ({ ...before, ...change }), replace: true });
  return (
    <Page
      title={texts.title(bike.name)}
      lead={texts.lead(fleet.riderName(bike.riderId), track?.name)}
      actions={
        <LinkButton variant="default" to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId: bike.id }}>
          {texts.toBike}
        </LinkButton>
      }
    >
      <div className={`${classes.choosers} ll-screen-only`}>
        {fleet.bikes.length > 1 && (
          <NativeSelect
            label={texts.bike}
            value={bike.id}
            onChange={(event) =>
              void navigate({
                to: '/teams/$teamId/bikes/$bikeId/workbench',
                params: { teamId, bikeId: event.currentTarget.value },
                search: (before) => before,
              })
            }
            data={fleet.bikes.map(({ id, name }) => ({ value: id, label: name }))}
          />
        )}
        {trackId !== undefined && (
          <NativeSelect
            label={texts.track}
            value={trackId}
            onChange={(event) => {
              rememberTrack(teamId, event.currentTarget.value);
              choose({ trackId: event.currentTarget.value });
            }}
            data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
          />
        )}
      </div>
      {trackId === undefined && <Text>{texts.noTracks}</Text>}
      <div aria-busy={ends.isPlaceholderData}>
        <QueryView
          query={state}
          isEmpty={(data) => data.ends?.setupId === null}
          empty={<NotSetUp teamId={teamId} bikeId={bike.id} canSetUp={role !== 'coach'} />}
        >
          {(data) =>
            data.ends !== undefined && (
              <Workbench
                teamId={teamId}
                ends={data.ends}
                setup={data.setups.find(({ id }) => id === data.ends?.setupId)}
                active={search.end ?? 'fork'}
                onActive={(end) => choose({ end })}
                canPropose={role !== 'coach'}
                canChange={role === 'mechanic'}
                onLookAgain={lookAgain}
              />
            )
          }
        </QueryView>
      </div>
    </Page>
  );
}
