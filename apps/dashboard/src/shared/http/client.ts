import type { Client } from 'openapi-fetch';
import { caller } from './call.js';
import type { paths } from './generated/schema.js';
import { NoConnection, problemOf } from './problem.js';

/**
 * The API as its OpenAPI document describes it: the types are those of `openapi-fetch`. What it would do at run time
 * is a few lines here, since they are in the first load of a phone.
 */
export const api = {
  GET: caller('GET'),
  POST: caller('POST'),
  PUT: caller('PUT'),
  DELETE: caller('DELETE'),
  PATCH: caller('PATCH'),
} as Pick<Client<paths>, 'GET' | 'POST' | 'PUT' | 'DELETE' | 'PATCH'>;

interface Answer<Body> {
  readonly data?: Body;
  readonly error?: unknown;
  readonly response: Response;
}

/** The body of an answer; a refusal is thrown as `ApiProblem`, a lost line as `NoConnection`. */
export async function bodyOf<Body>(call: Promise<Answer<Body>>): Promise<Body> {
  const answer = await call.catch((cause: unknown) => {
    throw new NoConnection('No connection to the service', { cause });
  });
  if (!answer.response.ok) throw problemOf(answer.response.status, answer.error);
  return answer.data as Body;
}

/** The header that lets the API tell a repeated message from a second one. */
export const idempotencyKey = (key: string) => ({ 'Idempotency-Key': key });

/** The header that lets the API refuse a change of something that somebody else has changed meanwhile. */
export const ifMatch = (version: number) => ({ 'If-Match': `"${version}"` });

/** A body that is a file as it stands. */
export const asFile = (type: string, content: string) => ({
  body: content,
  bodySerializer: (text: string) => text,
  headers: { 'Content-Type': type },
});
