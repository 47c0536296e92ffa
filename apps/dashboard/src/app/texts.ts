import type { Membership } from '../features/account/api/account.js';

const ROLE: Record<Membership['role'], string> = { mechanic: 'mechanic', coach: 'coach', rider: 'rider' };

export const texts = {
  product: 'Loamledger',
  skip: 'To the content',
  navigation: 'Pages',
  pit: 'Pit',
  tracks: 'Tracks',
  plans: 'Plans',
  myBike: 'My bike',
  team: 'Team',
  teamData: 'Data of the team',
  springUnits: 'Forks and shocks',
  riders: 'Riders',
  bikes: 'Bikes',
  members: 'Members',
  account: 'Account and display',
  signedInAs: 'Signed in as',
  role: ROLE,
  altitude: (metres: number) => `${metres} m`,
  importRuns: 'Import runs',
  changeTrack: 'Change the track',
  switchTeam: 'Team',
  appearance: 'Appearance',
  light: 'Light',
  dark: 'Dark',
  device: 'As the device',
  signOut: 'Sign out',
  notFound: 'Not here',
  notFoundLead: 'There is no such page, or it belongs to a team you are not in.',
  toStart: 'To the first page',
  noTeam: 'No team yet',
  noTeamLead:
    'You are signed in, but in no team. Ask a mechanic for a link to join theirs, or start your own.',
};
