import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { venueText } from '../../features/baselines/model/venue-text.js';
import { TrackDemand } from '../../features/demand/components/track-demand.js';
import { plannedSessionsQuery } from '../../shared/http/reads/planned-sessions.js';
import { RiderSheet } from '../../features/weekend/components/rider-sheet.js';
import { TeamSheet } from '../../features/weekend/components/team-sheet.js';
import { TEAM, WhichSheets } from '../../features/weekend/components/which-sheets.js';
import classes from '../../features/weekend/components/sheets.module.css';
import { lastDay } from '../../features/weekend/model/weekend.js';
import { sheetTexts as texts, texts as weekendTexts } from '../../features/weekend/texts.js';
import { formatNumber } from '../../shared/format/numbers.js';
import { formatDay } from '../../shared/format/time.js';
import type { Baseline } from '../../shared/http/reads/baselines.js';
import type { Fleet } from '../../shared/http/reads/fleet.js';
import type { Track } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useWeekend } from '../use-weekend.js';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/weekend/sheets');

/** The weekend on paper: a sheet for the team, and one for each rider. */
export function WeekendSheetsPage() {
  const { teamId } = route.useParams();
  const search = route.useSearch();
  const weekend = useWeekend(teamId, search);
  const { place } = weekend;
  return (
    <div className={classes.page}>
      <QueryView query={weekend.read}>
        {({ track, fleet }) =>
          track === undefined || fleet === undefined ? (
            <NotFoundPage />
          ) : (
            <>
              <div className="ll-screen-only">
                <Page
                  title={texts.title}
                  lead={texts.lead}
                  actions={
                    <>
                      <Button onClick={() => window.print()}>{texts.print}</Button>
                      <LinkButton
                        variant="default"
                        to="/teams/$teamId/weekend"
                        params={{ teamId }}
                        search={{ ...place }}
                      >
                        {texts.back}
                      </LinkButton>
                    </>
                  }
                />
              </div>
              <QueryView
                query={weekend.baselines}
                isEmpty={(items) => items.length === 0}
                empty={<Empty title={weekendTexts.nobody}>{weekendTexts.nobodyLead}</Empty>}
              >
                {(baselines) => (
                  <Sheets
                    teamId={teamId}
                    track={track}
                    fleet={fleet}
                    weekend={weekend}
                    baselines={baselines}
                    sheet={typeof search['sheet'] === 'string' ? search['sheet'] : undefined}
                  />
                )}
              </QueryView>
            </>
          )
        }
      </QueryView>
    </div>
  );
}

interface SheetsProps {
  readonly teamId: string;
  readonly track: Track;
  readonly fleet: Fleet;
  readonly weekend: ReturnType<typeof useWeekend>;
  readonly baselines: readonly Baseline[];
  readonly sheet: string | undefined;
}

function Sheets({ teamId, track, fleet, weekend, baselines, sheet }: SheetsProps) {
  const navigate = route.useNavigate();
  const { day, ground, place, planName } = weekend;
  const sessions = useQuery(
    plannedSessionsQuery(teamId, { trackId: track.id, fromDay: day, toDay: lastDay(day) }),
  );
  const bikeName = (id: string) => fleet.bikes.find((bike) => bike.id === id)?.name ?? '';
  const venue = baselines.find((baseline) => baseline.venue !== null)?.venue ?? null;
  const facts = [
    formatDay(day),
    weekendTexts.altitude(formatNumber(track.altitudeM)),
    venue === null ? '' : venueText(venue),
  ];
  const lead = facts.filter((fact) => fact !== '').join(' · ');
  const riders = fleet.riders.filter(({ id }) => baselines.some(({ riderId }) => riderId === id));
  return (
    <>
      <WhichSheets
        riders={riders}
        sheet={sheet}
        onChange={(chosen) =>
          void navigate({
            search: { ...place, ...(chosen !== undefined && { sheet: chosen }) },
            replace: true,
          })
        }
      />
      <QueryView query={sessions}>
        {(planned) => (
          <div className={classes.sheets}>
            {(sheet === undefined || sheet === TEAM) && (
              <TeamSheet
                title={track.name}
                lead={lead}
                baselines={baselines}
                nameOf={({ riderId, bikeId }) => `${fleet.riderName(riderId)}, ${bikeName(bikeId)}`}
                sessions={planned}
                riderName={fleet.riderName}
                planName={planName}
              >
                <TrackDemand
                  teamId={teamId}
                  trackId={track.id}
                  fleet={fleet}
                  condition={ground}
                  baselines={baselines}
                />
              </TeamSheet>
            )}
            {riders
              .filter(({ id }) => sheet === undefined || sheet === id)
              .map((rider) => (
                <RiderSheet
                  key={rider.id}
                  riderName={rider.name}
                  lead={`${track.name} · ${lead}`}
                  baselines={baselines.filter(({ riderId }) => riderId === rider.id)}
                  bikeName={bikeName}
                  sessions={planned.filter(({ riderIds }) => riderIds.includes(rider.id))}
                  planName={planName}
                />
              ))}
          </div>
        )}
      </QueryView>
    </>
  );
}
