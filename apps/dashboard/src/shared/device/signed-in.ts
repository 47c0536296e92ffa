const NAME = 'loamledger.account';

/** The account that was signed in on this device last; needed before the API can be asked. */
export const signedIn = {
  read: (): string | null => localStorage.getItem(NAME),
  write: (account: string): void => localStorage.setItem(NAME, account),
  forget: (): void => localStorage.removeItem(NAME),
};
