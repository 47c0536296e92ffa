import { useNavigate } from '@tanstack/react-router';
import { DownloadArchive } from '../../features/team-archive/components/download-archive.js';
import { TakeArchive } from '../../features/team-archive/components/take-archive.js';
import { texts } from '../../features/team-archive/texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { Page, Section } from '../../shared/ui/page.js';
import { useMembership } from '../use-membership.js';

export function TeamArchivePage() {
  const navigate = useNavigate();
  const { teamId, role } = useMembership().membership;
  if (role !== 'mechanic')
    return (
      <Empty isPage title={texts.title}>
        {texts.mechanicsOnly}
      </Empty>
    );
  return (
    <Page title={texts.title} lead={texts.lead}>
      <Section title={texts.get}>
        <DownloadArchive teamId={teamId} />
      </Section>
      <Section title={texts.take}>
        <TakeArchive
          onOpen={(taken) => void navigate({ to: '/teams/$teamId/pit', params: { teamId: taken } })}
        />
      </Section>
    </Page>
  );
}
