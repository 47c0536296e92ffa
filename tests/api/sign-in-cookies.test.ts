import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openEvents } from './support/events.js';
import { Member, PASSWORD } from './support/member.js';
import { startService, type TestService } from './support/service.js';

const PLAIN = 'loamledger_sign_in';
const PREFIXED = '__Host-loamledger_sign_in';

describe.each([
  { over: 'HTTPS', environment: { SECURE_COOKIES: 'true' }, name: PREFIXED, other: PLAIN },
  { over: 'HTTP', environment: { SECURE_COOKIES: 'false' }, name: PLAIN, other: PREFIXED },
])('the cookie of a sign-in over $over', ({ over, environment, name, other }) => {
  const isSecure = over === 'HTTPS';
  let service: TestService;
  beforeAll(async () => {
    service = await startService(environment);
  });
  afterAll(() => service.stop());

  /** The one cookie that an answer sets: its name, its value, and its flags in small letters. */
  function cookieOf({ headers }: Response) {
    const set = headers['set-cookie'] as unknown as string[] | undefined;
    expect(set).toHaveLength(1);
    const [pair = '', ...flags] = (set?.[0] ?? '').split(';').map((part) => part.trim());
    const [given, value = ''] = pair.split('=');
    return { given, value, flags: flags.map((flag) => flag.toLowerCase()) };
  }

  /** A browser takes the prefixed name, and believes the end of such a cookie, with exactly these flags only. */
  function expectFlags(answer: Response): void {
    const { given, flags } = cookieOf(answer);
    expect(given).toBe(name);
    expect(flags).toEqual(expect.arrayContaining(['path=/', 'httponly', 'samesite=strict']));
    expect(flags.includes('secure')).toBe(isSecure);
    expect(flags.filter((flag) => flag.startsWith('domain'))).toEqual([]);
  }

  const signIn = (email: string, password = PASSWORD) =>
    new Member(service).post('/sign-ins', { email, password }).expect(201);
  const current = (cookie: string) => new Member(service).get('/accounts/current').set('cookie', cookie);

  it('has its own name and flags, and is not taken under the other name', async () => {
    const member = await new Member(service).signUp();
    const answer = await signIn(member.email);
    expectFlags(answer);
    const { value } = cookieOf(answer);
    expect(value).toMatch(/^[\w-]{43}$/);
    await current(`${name}=${value}`).expect(200);
    await current(`${other}=${value}`).expect(401);
    await current(`${other}=${value}; ${name}=x`).expect(401);
    await current(`${other}=x; ${name}=${value}`).expect(200);
    expect(answer.headers['strict-transport-security'] !== undefined).toBe(isSecure);
  });

  it.each(['/sign-ins/current', '/sign-ins'])('ends in browser and database by DELETE %s', async (path) => {
    const member = await new Member(service).signUp();
    const { value } = cookieOf(await signIn(member.email));
    const answer = await new Member(service).delete(path).set('cookie', `${name}=${value}`).expect(204);
    expectFlags(answer);
    const { value: left, flags } = cookieOf(answer);
    expect(left).toBe('');
    expect(flags).toContain('expires=thu, 01 jan 1970 00:00:00 gmt');
    await current(`${name}=${value}`).expect(401);
  });

  it('tells which sign-in asks: it is the current one, ended by the next, kept by a new password', async () => {
    const member = await new Member(service).signUp();
    const { value } = cookieOf(await signIn(member.email));
    const asking = `${name}=${value}`;
    const { body } = await new Member(service).get('/sign-ins').set('cookie', asking).expect(200);
    expect((body as { current: boolean }[]).filter((one) => one.current)).toHaveLength(1);
    const newPassword = 'another sentence nobody guesses';
    await new Member(service)
      .post('/passwords/change', { oldPassword: PASSWORD, newPassword })
      .set('cookie', asking)
      .expect(200);
    await member.get('/accounts/current').expect(401);
    await current(asking).expect(200);
    await new Member(service)
      .post('/sign-ins', { email: member.email, password: newPassword })
      .set('cookie', asking)
      .expect(201);
    await current(asking).expect(401);
  });

  it('holds a stream of events open for as long as the sign-in lasts', async () => {
    const member = await new Member(service).signUp();
    const { id } = (await member.post('/teams', { name: 'Team 1' }).expect(201)).body as { id: string };
    const stream = await openEvents(`${service.url}/teams/${id}/events`, member.cookieHeader);
    await stream.next('ready');
    await member.delete('/sign-ins/current').expect(204);
    await stream.ended;
  });

  it('is named in the OpenAPI document', async () => {
    const { body } = await new Member(service).get('/openapi.json').expect(200);
    const { components } = body as { components: { securitySchemes: { cookie: { name: string } } } };
    expect(components.securitySchemes.cookie.name).toBe(name);
  });
});
