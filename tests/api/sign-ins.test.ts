import type { Response } from 'supertest';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { Member, PASSWORD } from './support/member.js';
import { asOwner, justTried } from './support/owner.js';

const WRONG = 'another sentence';

let service: TestService;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

const signIn = (member: Member, password = PASSWORD, email = member.email) =>
  member.post('/sign-ins', { email, password });
const tokenOf = ({ headers }: Response) => /=([\w-]+);/.exec(headers['set-cookie']?.[0] ?? '')?.[1] ?? '';

/** The person on another device. */
async function elsewhere(member: Member): Promise<Member> {
  const other = new Member(service);
  other.keep(await signIn(other, PASSWORD, member.email).expect(201));
  return other;
}

interface Listed {
  readonly id: string;
  readonly current: boolean;
  readonly device: string;
}
const listed = async (member: Member) => (await member.get('/sign-ins').expect(200)).body as Listed[];

describe('a sign-in', () => {
  it('fails alike for a wrong password and an unknown address', async () => {
    const member = await new Member(service).signUp();
    const wrong = await signIn(member, WRONG).expect(401);
    const unknown = await signIn(new Member(service)).expect(401);
    const told = ({ body }: { body: unknown }) => ({ ...(body as object), requestId: '' });
    expect(told(unknown)).toEqual(told(wrong));
  });

  it('is stored as a hash, so that who reads the database has no cookie', async () => {
    const member = new Member(service);
    const token = tokenOf(await signIn(await member.signUp()).expect(201));
    const rows = await asOwner(service, 'select * from sign_in');
    expect(rows.length).toBeGreaterThan(0);
    expect(JSON.stringify(rows)).not.toContain(token);
    const accounts = await asOwner(service, 'select password_hash from account');
    for (const row of accounts) expect(row['password_hash']).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });

  it('with a forged cookie is none', async () => {
    for (const cookie of ['x', '', '%00', "' or 1=1 --", 'a'.repeat(5_000)]) {
      const forged = new Member(service).get('/accounts/current');
      await forged.set('cookie', `loamledger_sign_in=${cookie}`).expect(401);
    }
  });

  it('has a token of its own each time, and ends the one that the browser had before', async () => {
    const member = await new Member(service).signUp();
    const before = await listed(member);
    const first = await signIn(member).expect(201);
    await member.get('/accounts/current').expect(401);
    member.keep(first);
    const after = await listed(member);
    expect(after).toHaveLength(1);
    expect(after[0]?.id).not.toBe(before[0]?.id);
    expect(tokenOf(await signIn(new Member(service), PASSWORD, member.email))).not.toBe(tokenOf(first));
  });

  it('ends with the sign-out, and its cookie is worth nothing afterwards', async () => {
    const member = await new Member(service).signUp();
    const other = await elsewhere(member);
    await member.delete('/sign-ins/current').expect(204);
    await member.get('/accounts/current').expect(401);
    await other.get('/accounts/current').expect(200);
  });

  it('ends after its time, however much it is used', async () => {
    const member = await new Member(service).signUp();
    await asOwner(service, `update sign_in set expires_at = now()`);
    await member.get('/accounts/current').expect(401);
  });

  it('ends when it was not used for long, and is kept by use', async () => {
    const [used, unused] = [await new Member(service).signUp(), await new Member(service).signUp()];
    await asOwner(service, `update sign_in set last_seen_at = now() - interval '13 days'`);
    await used.get('/accounts/current').expect(200);
    await asOwner(service, `update sign_in set last_seen_at = last_seen_at - interval '1 day'`);
    await used.get('/accounts/current').expect(200);
    await unused.get('/accounts/current').expect(401);
  });

  it('is listed for its owner, who ends one or all of them', async () => {
    const member = await new Member(service).signUp();
    const phone = await elsewhere(member);
    const third = await elsewhere(member);
    const stranger = await new Member(service).signUp();
    const own = await listed(member);
    expect(own).toHaveLength(3);
    expect(own.filter(({ current }) => current)).toHaveLength(1);
    const theirs = (await listed(phone)).find(({ current }) => current)?.id ?? '';
    await stranger.delete(`/sign-ins/${theirs}`).expect(404);
    await member.delete(`/sign-ins/${theirs}`).expect(204);
    await phone.get('/accounts/current').expect(401);
    await third.get('/accounts/current').expect(200);
    await member.delete('/sign-ins').expect(204);
    for (const ended of [member, third]) await ended.get('/accounts/current').expect(401);
    await stranger.get('/accounts/current').expect(200);
  });

  it('tells what kind of device it is on', async () => {
    const member = await new Member(service).signUp();
    const agent = 'Mozilla/5.0 (Linux; Mobile) Engine/1';
    await signIn(new Member(service), PASSWORD, member.email).set('user-agent', agent).expect(201);
    expect((await listed(member)).map(({ device }) => device).toSorted()).toEqual(['other', 'phone']);
  });
});

describe('a sign-in that fails', () => {
  it('has to wait after some failures, told for how long, even with the right password', async () => {
    const member = await new Member(service).signUp();
    for (let tries = 0; tries < 5; tries += 1) await signIn(member, WRONG).expect(401);
    await justTried(service);
    const { body, headers } = await signIn(member).expect(429);
    expect(body).toMatchObject({ code: 'sign-in.too-many-tries' });
    expect(Number(headers['retry-after'])).toBeGreaterThan(0);
    await signIn(await new Member(service).signUp()).expect(201);
  });

  it('waits in every process, since the failures are in the database', async () => {
    const second = await startService({}, service.database);
    try {
      const member = await new Member(service).signUp();
      for (let tries = 0; tries < 5; tries += 1) await signIn(member, WRONG).expect(401);
      await justTried(service);
      await signIn(new Member(second), PASSWORD, member.email).expect(429);
    } finally {
      await second.stop();
    }
  });

  it('gets no more tries by many at once', async () => {
    const member = await new Member(service).signUp();
    const answers = await Promise.all(Array.from({ length: 12 }, () => signIn(member, WRONG)));
    expect(answers.filter(({ status }) => status === 401).length).toBeLessThanOrEqual(6);
    expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([401, 429]));
  });

  it('is forgiven by a success', async () => {
    const member = await new Member(service).signUp();
    for (let round = 0; round < 3; round += 1) {
      for (let tries = 0; tries < 4; tries += 1) await signIn(member, WRONG).expect(401);
      await signIn(member).expect(201);
    }
  });

  it('waits twice as long after each further failure, up to a limit, and no longer after some quiet', async () => {
    const waits: number[] = [];
    // One connection: to open one may take longer than what is left of a delay here.
    const owner = new Client({ connectionString: service.database.ownerUrl });
    await owner.connect();
    onTestFinished(() => owner.end());
    const take = async () =>
      (await owner.query<{ wait: number }>(`select take_try('key', 5, 1, 300) as wait`)).rows[0]?.wait ?? 0;
    const quiet = (span: string) =>
      owner.query(`update sign_in_try set last_at = clock_timestamp() - $1::interval`, [span]);
    for (let failures = 0; failures < 18; failures += 1) {
      // One of the future counts as one of the moment. Some of the delay is over when it is told.
      await quiet('-1 hours');
      const wait = Math.ceil(await take());
      waits.push(wait);
      if (wait === 0) continue;
      await quiet(`${wait - 0.5} seconds`);
      expect(await take()).toBeGreaterThan(0);
      await quiet(`${wait} seconds`);
      expect(await take()).toBe(0);
    }
    expect(waits.slice(0, 9)).toEqual([0, 0, 0, 0, 0, 1, 2, 4, 8]);
    expect(Math.max(...waits)).toBe(300);
    await quiet('16 minutes');
    for (let tries = 0; tries < 5; tries += 1) expect(await take()).toBe(0);
    expect(await take()).toBeGreaterThan(0);
  });

  it('keeps neither addresses nor e-mail addresses', async () => {
    const member = await new Member(service).signUp();
    await signIn(member, WRONG).expect(401);
    const rows = await asOwner(service, `select key_hash from sign_in_try where key_hash <> 'key'`);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row['key_hash']).toMatch(/^[\da-f]{64}$/);
  });
});

describe("a caller's own address", () => {
  /** Whether five failures from one address make another one wait, as the service is told of the two by a proxy. */
  async function waitsFrom(
    other: string,
    environment: Record<string, string>,
    first = '192.0.2.1',
  ): Promise<boolean> {
    const behind = await startService(environment, service.database);
    try {
      const member = await new Member(service).signUp();
      const from = (address: string, password: string) =>
        signIn(new Member(behind), password, member.email).set('x-forwarded-for', address);
      for (let tries = 0; tries < 5; tries += 1) await from(first, WRONG).expect(401);
      await justTried(service);
      return (await from(other, PASSWORD)).status === 429;
    } finally {
      await behind.stop();
    }
  }

  it('is what a trusted proxy says', async () => {
    expect(await waitsFrom('192.0.2.2', { TRUSTED_PROXIES: '127.0.0.0/8' })).toBe(false);
    expect(await waitsFrom('192.0.2.1', { TRUSTED_PROXIES: '127.0.0.0/8' })).toBe(true);
  });

  it('counts as the network that it is one of countless addresses of', async () => {
    const trusting = { TRUSTED_PROXIES: '127.0.0.0/8' };
    expect(await waitsFrom('2001:db8:1:2:ffff::9', trusting, '2001:db8:1:2::1')).toBe(true);
    expect(await waitsFrom('2001:db8:1:3::1', trusting, '2001:db8:1:2::1')).toBe(false);
    expect(await waitsFrom('::ffff:192.0.2.1', trusting)).toBe(true);
  });

  it('is not what the caller itself says', async () => {
    expect(await waitsFrom('192.0.2.2', {})).toBe(true);
  });
});
