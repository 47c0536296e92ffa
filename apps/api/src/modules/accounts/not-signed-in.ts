import { Refusal } from '../../platform/errors/refusal.js';

/** For who is a stranger where strangers may nothing. */
export const notSignedIn = () => new Refusal('sign-in.required', 'unauthenticated', 'Sign in first.');
