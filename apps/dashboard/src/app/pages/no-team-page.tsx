import { Empty } from '../../shared/ui/empty.js';
import { DoorShell } from '../shell/door-shell.js';
import { texts } from '../texts.js';

export function NoTeamPage() {
  return (
    <DoorShell>
      <Empty title={texts.noTeam}>{texts.noTeamLead}</Empty>
    </DoorShell>
  );
}
