import { formatCount } from '../../shared/format/numbers.js';

export const texts = {
  title: 'Password',
  lead: 'Changing it ends every other sign-in of yours.',
  tokensStay: 'Tokens for scripts act in your name without a password. They stay in force when it changes:',
  tokensIn: (count: number, team: string) => `${formatCount(count, 'token')} in ${team}`,
  endTokens: 'End my tokens for scripts as well',
  endTokensWhy:
    'Tick it if somebody else may have got in: they could have made tokens. Scripts that use yours stop at once.',
  old: 'The password as it is',
  new: 'The new password',
  hint: 'At least 10 characters; a long sentence is best.',
  change: 'Change the password',
  changed: 'Changed. You are signed in here and nowhere else.',
  noTokensLeft: 'No token acts in your name.',
  tokensLeft: 'Your tokens for scripts are still in force.',
  notChanged: 'Not changed',
  setTitle: 'New password',
  setLead: 'Your mechanic has made this link for you. It works once, and ends every sign-in of yours.',
  set: 'Set it and sign in',
  linkBroken: 'This link carries nothing to set a password with. Ask your mechanic for a new one.',
};
