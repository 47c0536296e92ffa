/** What every page says; what others say loads with them. */
export const texts = {
  product: 'Loamledger',
  skip: 'To the content',
  navigation: 'Pages',
  pit: 'Pit',
  tracks: 'Tracks',
  plans: 'Plans',
  weekend: 'Weekend',
  myBike: 'My bike',
  team: 'Team',
  account: 'Account and display',
  newVersion: 'A newer version is ready.',
  useNewVersion: 'Use it now',
  notFound: 'Not here',
  notFoundLead: 'There is no such page, or it belongs to a team you are not in.',
  toStart: 'To the first page',
};
