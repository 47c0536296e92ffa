import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { POLICY, policyOf } from '../support/policy.js';
import { Member, PASSWORD } from './support/member.js';
import { startService, type TestService } from './support/service.js';

let service: TestService;
let member: Member;
beforeAll(async () => {
  service = await startService();
  member = await new Member(service).signUp();
});
afterAll(() => service.stop());

const team = () => member.post('/teams', { name: 'Team 1' });
const host = () => new URL(service.url).host;

describe('a write that a page makes a browser send', () => {
  it.each([
    ['another site', { 'sec-fetch-site': 'cross-site' }],
    ['another host of the same site', { 'sec-fetch-site': 'same-site' }],
    ['another origin, in an older browser', { origin: 'https://other.example' }],
    ['a sandboxed frame', { origin: 'null' }],
    ['the same host over another port', { origin: 'http://127.0.0.1:1' }],
  ])('is refused from %s', async (_, headers) => {
    const { body } = await team().set(headers).expect(403);
    expect(body).toMatchObject({ code: 'request.cross-site' });
    // Neither may a stranger be signed in as somebody else.
    const credentials = { email: member.email, password: PASSWORD };
    await new Member(service).post('/sign-ins', credentials).set(headers).expect(403);
    await member.delete('/sign-ins').set(headers).expect(403);
    await member.get('/accounts/current').set(headers).expect(200);
  });

  it('is taken from our own pages, and from what is no browser', async () => {
    await team().set('sec-fetch-site', 'same-origin').expect(201);
    await team().set('origin', `http://${host()}`).expect(201);
    await team().expect(201);
  });
});

describe('every answer', () => {
  it('forbids scripts and styles that stand in a page, and frames around it', async () => {
    for (const path of ['/health/live', '/nothing', '/accounts/current']) {
      const { headers } = await new Member(service).get(path);
      const policy = policyOf(headers['content-security-policy']);
      for (const [what, allowed] of Object.entries(POLICY)) expect(policy.get(what), what).toBe(allowed);
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cache-control': 'private, no-cache',
      });
      expect(headers['permissions-policy']).toContain('geolocation=()');
      expect(headers['access-control-allow-origin']).toBeUndefined();
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });
});
