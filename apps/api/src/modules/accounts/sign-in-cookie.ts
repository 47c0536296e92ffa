/** The cookie that holds the token of a sign-in. */
export const SIGN_IN_COOKIE = 'loamledger_sign_in';
