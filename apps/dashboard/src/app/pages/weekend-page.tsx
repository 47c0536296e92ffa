import { Checkbox } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { BikeBaseline } from '../../features/baselines/components/bike-baseline.js';
import { GroundChooser } from '../../features/baselines/components/ground-chooser.js';
import { TakeSeveral } from '../../features/baselines/components/take-several.js';
import { canBeTaken, isInBike } from '../../features/baselines/model/fill-text.js';
import { texts as trackTexts } from '../../features/tracks/texts.js';
import { texts as baselineTexts } from '../../features/baselines/texts.js';
import { TrackDemand } from '../../features/demand/components/track-demand.js';
import { texts as demandTexts } from '../../features/demand/texts.js';
import { Sessions } from '../../features/weekend/components/sessions.js';
import { WeekendChoice } from '../../features/weekend/components/weekend-choice.js';
import { texts } from '../../features/weekend/texts.js';
import { formatNumber } from '../../shared/format/numbers.js';
import { formatDay } from '../../shared/format/time.js';
import type { Fleet } from '../../shared/http/reads/fleet.js';
import type { Track } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { useWeekend } from '../use-weekend.js';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/weekend');

/** The coach's weekend: who starts with what on a track, in the air that is expected, and who rides when. */
export function WeekendPage() {
  const { teamId } = route.useParams();
  const navigate = route.useNavigate();
  const weekend = useWeekend(teamId, route.useSearch());
  const { place, ground, day } = weekend;
  const { role } = useMembership().membership;
  // Planned for the riders, not by them.
  if (role === 'rider') return <NotFoundPage />;
  return (
    <QueryView query={weekend.read}>
      {({ tracks, track, fleet }) =>
        track === undefined || fleet === undefined ? (
          <Page title={texts.title}>
            <Empty
              title={texts.noTracks}
              action={
                <LinkButton to="/teams/$teamId/tracks/$trackId/change" params={{ teamId, trackId: 'new' }}>
                  {trackTexts.add}
                </LinkButton>
              }
            >
              {texts.noTracksLead}
            </Empty>
          </Page>
        ) : (
          <Page
            title={texts.title}
            lead={`${track.name} · ${texts.altitude(formatNumber(track.altitudeM))} · ${formatDay(day)}. ${texts.lead}`}
            actions={
              <LinkButton
                to="/teams/$teamId/weekend/sheets"
                params={{ teamId }}
                search={{ ...place, trackId: track.id, day }}
              >
                {texts.sheets}
              </LinkButton>
            }
          >
            <Section title={texts.where}>
              <WeekendChoice
                // Typed figures belong to the place that they were typed for.
                key={track.id}
                tracks={tracks}
                fleet={fleet}
                track={track}
                day={day}
                place={place}
                onChange={(next) => void navigate({ search: { ...next }, replace: true })}
              >
                <GroundChooser
                  ground={ground}
                  onChange={(chosen) =>
                    void navigate({ search: { ...place, ground: chosen }, replace: true })
                  }
                />
              </WeekendChoice>
            </Section>
            <Advised teamId={teamId} track={track} fleet={fleet} weekend={weekend} />
            <Section title={texts.sessions}>
              <Sessions
                // What is being typed is a session on this track.
                key={track.id}
                teamId={teamId}
                trackId={track.id}
                day={day}
                fleet={fleet}
                plans={weekend.plans}
                planName={weekend.planName}
              />
            </Section>
          </Page>
        )
      }
    </QueryView>
  );
}

interface AdvisedProps {
  readonly teamId: string;
  readonly track: Track;
  readonly fleet: Fleet;
  readonly weekend: ReturnType<typeof useWeekend>;
}

/** The track's demand, and the baseline of every rider and bike that goes there; all or some can be taken at once. */
function Advised({ teamId, track, fleet, weekend }: AdvisedProps) {
  const { role } = useMembership().membership;
  /** Bikes whose baseline is not to be taken. */
  const [spared, setSpared] = useState<readonly string[]>([]);
  const bikeName = (id: string) => fleet.bikes.find((bike) => bike.id === id)?.name ?? '';
  const nameOf = ({ riderId, bikeId }: { riderId: string; bikeId: string }) =>
    `${fleet.riderName(riderId)}, ${bikeName(bikeId)}`;
  const choose = (bikeId: string, take: boolean) =>
    setSpared(take ? spared.filter((id) => id !== bikeId) : [...spared, bikeId]);
  return (
    <>
      <Section title={demandTexts.title}>
        <TrackDemand
          teamId={teamId}
          trackId={track.id}
          fleet={fleet}
          condition={weekend.ground}
          baselines={weekend.baselines.data ?? []}
        />
      </Section>
      <Section title={baselineTexts.title}>
        <QueryView
          query={weekend.baselines}
          isEmpty={(items) => items.length === 0}
          empty={<Empty title={texts.nobody}>{texts.nobodyLead}</Empty>}
        >
          {(items) => (
            <>
              {items.map((baseline) => (
                <BikeBaseline
                  key={baseline.bikeId}
                  teamId={teamId}
                  baseline={baseline}
                  riderName={fleet.riderName(baseline.riderId)}
                  bikeName={bikeName(baseline.bikeId)}
                  canChange={role === 'mechanic'}
                  action={
                    canBeTaken(baseline) ? (
                      <Checkbox
                        size="lg"
                        label={baselineTexts.several.choose}
                        aria-label={`${baselineTexts.several.choose}: ${nameOf(baseline)}`}
                        checked={!spared.includes(baseline.bikeId)}
                        onChange={(event) => choose(baseline.bikeId, event.currentTarget.checked)}
                      />
                    ) : (
                      isInBike(baseline) && baselineTexts.already
                    )
                  }
                />
              ))}
              <TakeSeveral
                // What somebody is asked to take is for this place and this air.
                key={[track.id, weekend.ground, weekend.place.temperatureC].join()}
                teamId={teamId}
                baselines={items.filter(
                  (baseline) => canBeTaken(baseline) && !spared.includes(baseline.bikeId),
                )}
                nameOf={nameOf}
              />
            </>
          )}
        </QueryView>
      </Section>
    </>
  );
}
