import { useNavigate } from '@tanstack/react-router';
import { CreateTeamForm } from '../../features/account/components/create-team-form.js';
import { TakeArchive } from '../../features/team-archive/components/take-archive.js';
import { texts as archiveTexts } from '../../features/team-archive/texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { Section } from '../../shared/ui/page.js';
import { DoorShell } from '../shell/door-shell.js';
import { texts } from '../texts.js';

export function NoTeamPage() {
  const navigate = useNavigate();
  return (
    <DoorShell>
      <Empty isPage title={texts.noTeam}>
        {texts.noTeamLead}
      </Empty>
      <CreateTeamForm
        onMade={(teamId) => void navigate({ to: '/teams/$teamId/first-steps', params: { teamId } })}
      />
      <Section title={archiveTexts.take}>
        <TakeArchive onOpen={(teamId) => void navigate({ to: '/teams/$teamId/pit', params: { teamId } })} />
      </Section>
    </DoorShell>
  );
}
