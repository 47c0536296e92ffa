import type { Membership } from '../features/account/api/account.js';
import { withUnit } from '../shared/format/with-unit.js';

const ROLE: Record<Membership['role'], string> = { mechanic: 'mechanic', coach: 'coach', rider: 'rider' };

export const texts = {
  teamData: 'Data of the team',
  springUnits: 'Forks and shocks',
  spacers: 'Spacers',
  riders: 'Riders',
  bikes: 'Bikes',
  members: 'Members',
  tokens: 'Tokens',
  audit: 'Audit',
  archive: 'Archive',
  firstSteps: 'First steps',
  signIns: 'Sign-ins and password',
  units: 'Units',
  signedInAs: 'Signed in as',
  role: ROLE,
  altitude: (metres: string) => withUnit(metres, 'm'),
  importRuns: 'Import runs',
  changeTrack: 'Change the track',
  switchTeam: 'Team',
  appearance: 'Appearance',
  light: 'Light',
  dark: 'Dark',
  device: 'As the device',
  signOut: 'Sign out',
  noTeam: 'No team yet',
  noTeamLead:
    'You are signed in, but in no team. Ask a mechanic for a link to join theirs, or start your own.',
};
