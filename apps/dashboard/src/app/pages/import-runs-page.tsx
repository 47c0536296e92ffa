import { Anchor } from '@mantine/core';
import { ImportForm } from '../../features/run-import/components/import-form.js';
import { texts } from '../../features/run-import/texts.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { useMembership } from '../use-membership.js';

export function ImportRunsPage() {
  const { teamId } = useMembership().membership;
  return (
    <Page
      title={texts.title}
      lead={texts.lead}
      actions={
        <LinkButton variant="default" to="/teams/$teamId/tracks" params={{ teamId }}>
          {texts.toTracks}
        </LinkButton>
      }
    >
      <ImportForm teamId={teamId} />
      <Anchor href={`/api/v1/teams/${teamId}/runs/export`} download="runs.csv">
        {texts.exportRuns}
      </Anchor>
    </Page>
  );
}
