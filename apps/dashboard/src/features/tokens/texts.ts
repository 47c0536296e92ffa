import type { TokenScope } from './api/tokens.js';

const SCOPE: Record<TokenScope, string> = {
  read: 'read the team’s data',
  'log-runs': 'log and import runs',
  'change-set-ups': 'change set-ups and enter outcomes',
  'edit-records': 'edit riders, units, bikes, tracks and plans',
};

export const texts = {
  title: 'Tokens',
  lead: 'A token lets a script work with this team’s data, in the name of who made it. It ends when it is revoked, or when that person leaves the team.',
  scope: SCOPE,
  none: 'No tokens',
  noneLead: 'No script works with this team’s data.',
  made: 'Made',
  lastUsed: 'Last used',
  never: 'never',
  revoke: 'Revoke',
  revokeAsk: 'Revoke it? Scripts that use it stop at once.',
  revokeYes: 'Yes, revoke',
  keep: 'No, keep',
  notRevoked: 'Not revoked',
  make: 'Make a token',
  name: 'What it is for',
  scopes: 'What a script may do with it',
  token: 'The token, shown only now',
  copy: 'Copy',
  copied: 'Copied',
};
