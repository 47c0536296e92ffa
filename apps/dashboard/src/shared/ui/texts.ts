export const texts = {
  loading: 'Loading…',
  retry: 'Try again',
  noConnection: 'No connection',
  noConnectionHelp: 'The service could not be reached. Check the line, then try again.',
  problem: 'Not available',
  unexpected: 'Something went wrong on this page. Reload it; if it stays, tell your mechanic what you did.',
  notSaved: 'Not saved',
  unreadable: 'The file cannot be read here. Choose it again.',
  leaveIt: 'Leave it as it is',
  loggedUnder: (id: string) => `The service has logged it under ${id}.`,
  asOf: (clock: string, isCutOff: boolean) => `as of ${clock}${isCutOff ? ', no signal' : ''}`,
};
