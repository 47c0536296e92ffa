import createClient from 'openapi-fetch';
import type { paths } from './generated/schema.js';
import { NoConnection, problemOf } from './problem.js';

/** The API as its OpenAPI document describes it; the session travels in an http-only cookie. */
export const api = createClient<paths>({ baseUrl: '/', credentials: 'same-origin' });

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

/** A body that is a CSV file as it stands. */
export const asCsv = (csv: string) => ({
  body: csv,
  bodySerializer: (text: string) => text,
  headers: { 'Content-Type': 'text/csv' },
});
