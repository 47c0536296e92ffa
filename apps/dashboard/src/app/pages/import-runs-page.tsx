import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { GROUNDS } from '../../features/baselines/model/ground.js';
import { ImportForm } from '../../features/run-import/components/import-form.js';
import { RecordingForm } from '../../features/run-import/components/recording-form.js';
import { texts } from '../../features/run-import/texts.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery } from '../../shared/http/reads/bikes.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function ImportRunsPage() {
  const { teamId } = useMembership().membership;
  const [tracks, bikes] = [useQuery(tracksQuery(teamId)), useQuery(bikesQuery(teamId))];
  const place = joined([tracks, bikes], () => ({ tracks: tracks.data ?? [], bikes: bikes.data ?? [] }));
  return (
    <Page
      title={texts.title}
      lead={texts.lead}
      actions={
        <>
          <Button
            component="a"
            variant="default"
            href={`/api/v1/teams/${teamId}/runs/export`}
            download="runs.csv"
          >
            {texts.exportRuns}
          </Button>
          <LinkButton variant="default" to="/teams/$teamId/tracks" params={{ teamId }}>
            {texts.toTracks}
          </LinkButton>
        </>
      }
    >
      <ImportForm teamId={teamId} />
      <Section title={texts.recording}>
        <QueryView query={place}>
          {(known) => <RecordingForm teamId={teamId} {...known} grounds={GROUNDS} />}
        </QueryView>
      </Section>
    </Page>
  );
}
