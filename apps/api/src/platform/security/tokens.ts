import { createHash, randomBytes } from 'node:crypto';

const TOKEN_BYTES = 32;

/** A secret that cannot be guessed, fit for a cookie or a link. */
export const newToken = (): string => randomBytes(TOKEN_BYTES).toString('base64url');

/** What is stored of a token: who reads the database cannot sign in with it. */
export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex');
