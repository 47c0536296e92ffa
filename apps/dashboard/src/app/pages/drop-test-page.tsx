import { Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import type { DropPlace } from '../../features/workshop/api/drop-test.js';
import { ChooseEnd } from '../../features/workshop/components/choose-end.js';
import { DropTest } from '../../features/workshop/components/drop-test.js';
import { PrintButton } from '../../features/workshop/components/print-button.js';
import { Steps } from '../../features/workshop/components/steps.js';
import { texts } from '../../features/workshop/drop-texts.js';
import type { LandingValues } from '../../features/workshop/model/drop-form.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery, type Bike } from '../../shared/http/reads/bikes.js';
import { tracksQuery, type Track } from '../../shared/http/reads/tracks.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { ToFirstSteps } from './to-first-steps.js';

const route = getRouteApi('/teams/$teamId/drop-test');

export function DropTestPage() {
  const { teamId } = route.useParams();
  const bikes = useQuery(bikesQuery(teamId));
  const tracks = useQuery(tracksQuery(teamId));
  const query = joined([bikes, tracks], () => ({ bikes: bikes.data ?? [], tracks: tracks.data ?? [] }));
  return (
    <Page title={texts.title} lead={texts.lead} actions={<PrintButton label={texts.print} />}>
      <QueryView query={query}>
        {(data) => {
          const [first] = data.bikes;
          if (first === undefined)
            return (
              <Empty title={texts.noBikes} action={<ToFirstSteps />}>
                {texts.noBikesLead}
              </Empty>
            );
          return <ChosenBike teamId={teamId} first={first} {...data} />;
        }}
      </QueryView>
    </Page>
  );
}

interface ChosenBikeProps {
  readonly teamId: string;
  readonly bikes: readonly Bike[];
  readonly first: Bike;
  readonly tracks: readonly Track[];
}

/** The bike, end and air in the address, or what is most likely meant. */
function ChosenBike({ teamId, bikes, first, tracks }: ChosenBikeProps) {
  const search = route.useSearch();
  const navigate = useNavigate({ from: '/teams/$teamId/drop-test' });
  // Kept where another end or air is chosen: a slip there must not cost the readings.
  const [landings, setLandings] = useState<readonly LandingValues[]>([]);
  const bike = bikes.find(({ id }) => id === search.bikeId) ?? first;
  const place: DropPlace = {
    bikeId: bike.id,
    end: bike.shockUnitId === null ? 'fork' : (search.end ?? 'fork'),
    trackId: tracks.find(({ id }) => id === search.trackId)?.id,
  };
  const lacksLeverage = place.end === 'shock' && bike.leverageTable.length === 0;
  return (
    <>
      <ChooseEnd
        bikes={bikes}
        tracks={tracks}
        place={place}
        onChange={(part) => void navigate({ search: (before) => ({ ...before, ...part }), replace: true })}
      />
      <Section title={texts.how}>
        <Steps steps={texts.steps} />
      </Section>
      {lacksLeverage ? (
        <>
          <Text>{texts.notForShock}</Text>
          <div>
            <LinkButton
              variant="default"
              to="/teams/$teamId/team/bikes/$bikeId"
              params={{ teamId, bikeId: bike.id }}
            >
              {texts.toBike}
            </LinkButton>
          </div>
        </>
      ) : (
        <DropTest
          key={`${place.bikeId} ${place.end} ${place.trackId ?? ''}`}
          teamId={teamId}
          place={place}
          landings={landings}
          onChange={setLandings}
        />
      )}
    </>
  );
}
