import { afterEach, describe, expect, it, vi } from 'vitest';
import { addressOf, caller } from './call.js';

describe('the address of a call', () => {
  it('has what stands in the brackets, made safe for a path', () => {
    expect(addressOf('/teams/{teamId}/runs/{id}', { path: { teamId: 'a', id: 'b/c d' } })).toBe(
      '/teams/a/runs/b%2Fc%20d',
    );
  });

  it('leaves out what is not asked, and repeats what has several values', () => {
    expect(addressOf('/runs', { query: { limit: 5, cursor: undefined, id: ['x', 'y&z'] } })).toBe(
      '/runs?limit=5&id=x&id=y%26z',
    );
    expect(addressOf('/runs', { query: { cursor: undefined } })).toBe('/runs');
  });
});

describe('a call', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('carries the headers of its route, such as the version that a change was made to, beside its own', async () => {
    const send = vi.fn<(address: string, call: RequestInit) => Promise<Response>>(async () =>
      Response.json({}),
    );
    vi.stubGlobal('fetch', send);
    await caller('PUT')('/plans/{id}', {
      params: { path: { id: 'a' }, header: { 'If-Match': '"3"' } },
      headers: { 'Idempotency-Key': 'k' },
      body: { note: '' },
    });
    const headers = new Headers(send.mock.calls[0]?.[1].headers);
    expect(Object.fromEntries(headers)).toEqual({
      'content-type': 'application/json',
      'if-match': '"3"',
      'idempotency-key': 'k',
    });
  });
});
