const NAME = 'loamledger_sign_in';

/**
 * The name of the cookie that holds the token of a sign-in. Over HTTPS it begins with what browsers take from nobody but
 * the very host, over HTTPS, for all of its paths: no page of a neighbouring host, and nobody on a line without HTTPS, can
 * then put a sign-in of their own in the place of ours.
 */
export const signInCookieName = (isHttps: boolean): string => (isHttps ? `__Host-${NAME}` : NAME);
