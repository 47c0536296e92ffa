import type { SignIn } from './api/sign-ins.js';

const DEVICE: Record<SignIn['device'], string> = {
  phone: 'Phone or tablet',
  computer: 'Computer',
  other: 'Another program',
};

export const texts = {
  title: 'Sign-ins and password',
  lead: 'Where you are signed in. A sign-in ends by itself after 14 days without use, and after 30 days in any case.',
  device: DEVICE,
  thisOne: 'this one',
  began: 'Since',
  lastUsed: 'last used',
  end: 'End it',
  notEnded: 'Not ended',
  everywhere: 'Sign out everywhere',
};
