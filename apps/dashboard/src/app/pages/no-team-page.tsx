import { useNavigate } from '@tanstack/react-router';
import { CreateTeamForm } from '../../features/account/components/create-team-form.js';
import { Empty } from '../../shared/ui/empty.js';
import { DoorShell } from '../shell/door-shell.js';
import { texts } from '../texts.js';

export function NoTeamPage() {
  const navigate = useNavigate();
  return (
    <DoorShell>
      <Empty title={texts.noTeam}>{texts.noTeamLead}</Empty>
      <CreateTeamForm onMade={(teamId) => void navigate({ to: '/teams/$teamId/team', params: { teamId } })} />
    </DoorShell>
  );
}
