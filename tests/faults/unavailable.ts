import { expect } from 'vitest';

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string>;
  readonly body: unknown;
}

/** An answer that says that the database is out of reach, and when to come again. */
export function expectUnavailable({ status, headers, body }: Answer): void {
  expect(body).toMatchObject({ status: 503, code: 'database.unavailable' });
  expect(status).toBe(503);
  expect(Number(headers['retry-after'])).toBeGreaterThan(0);
}
