import { hash, verify } from '@node-rs/argon2';

/**
 * argon2id, the package's default algorithm, with 19 MiB, two passes, one lane: the minimum that the OWASP Password
 * Storage Cheat Sheet names (cheatsheetseries.owasp.org).
 */
const PARAMETERS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export const hashPassword = (password: string): Promise<string> => hash(comparable(password), PARAMETERS);

/** Keyboards write the same letter in different ways (NIST SP 800-63B, 5.1.1.2); spaces are part of a password. */
const comparable = (password: string): string => password.normalize('NFKC');

/** A hash of no password anybody has, compared where there is no account, so that timing does not tell. */
const NOBODY = await hashPassword('nobody has this password: ' + Math.random());

/** Whether `password` is the one behind `passwordHash`; takes as long for an account that is not there. */
export async function passwordMatches(passwordHash: string | undefined, password: string): Promise<boolean> {
  const matches = await verify(passwordHash ?? NOBODY, comparable(password));
  return matches && passwordHash !== undefined;
}
