import { setTimeout as sleep } from 'node:timers/promises';
import { Client } from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { AccountsService } from '../../apps/api/src/modules/accounts/accounts.service.js';
import { Member, PASSWORD } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite } from './support/team.js';

const NEW = 'another sentence nobody guesses';
const THEIRS = 'the sentence of somebody else';

let service: TestService;
let member: Member;
/** Lets the next whose password was right wait before anything comes of it, until it is called. */
let holdNextProof: () => () => void;
beforeAll(async () => {
  service = await startService();
  const accounts = service.app.get(AccountsService);
  const prove = accounts.provenAccount.bind(accounts);
  let gate: Promise<void> | undefined;
  accounts.provenAccount = async (...given) => {
    const proven = await prove(...given);
    const held = gate;
    gate = undefined;
    await held;
    return proven;
  };
  holdNextProof = () => {
    let release = () => {};
    gate = new Promise((resolve) => (release = resolve));
    return release;
  };
});
afterAll(() => service.stop());
beforeEach(async () => {
  member = await new Member(service).signUp();
});

const signIn = (password: string) => new Member(service).post('/sign-ins', { email: member.email, password });
const change = (who: Member, oldPassword: string, newPassword: string) =>
  who.post('/passwords/change', { oldPassword, newPassword }).then((answer) => answer);
/** Somebody else who knows the old password and is signed in by it. */
async function intruder(): Promise<Member> {
  const other = new Member(service);
  other.keep(await signIn(PASSWORD).expect(201));
  return other;
}
const tries = async () =>
  (await asOwner<{ tries: number }>(service, 'select sum(tries)::int as tries from sign_in_try'))[0]?.tries;

describe('who knows the old password, and was proven right by it a moment before it was changed,', () => {
  it('is not signed in by it afterwards', async () => {
    const release = holdNextProof();
    const late = signIn(PASSWORD).then((answer) => answer);
    await vi.waitFor(async () => expect(await tries()).toBeGreaterThan(0));
    await sleep(300);
    expect((await change(member, PASSWORD, NEW)).status).toBeLessThan(300);
    release();
    const { status, body } = await late;
    expect([status, (body as { code: string }).code]).toEqual([401, 'sign-in.wrong-credentials']);
    const { body: signIns } = await member.get('/sign-ins').expect(200);
    expect(signIns).toHaveLength(1);
  });

  it('does not change it once more', async () => {
    const other = await intruder();
    const release = holdNextProof();
    const late = change(other, PASSWORD, THEIRS);
    await sleep(500);
    expect((await change(member, PASSWORD, NEW)).status).toBeLessThan(300);
    release();
    expect((await late).status).toBe(422);
    await signIn(THEIRS).expect(401);
    await signIn(NEW).expect(201);
    await member.get('/accounts/current').expect(200);
  });

  it('is not signed in by an invitation either', async () => {
    const team = await foundTeam(service);
    const token = await invite(team, { role: 'coach' });
    const release = holdNextProof();
    const late = new Member(service)
      .post('/invitations/accept', { email: member.email, password: PASSWORD, displayName: 'X', token })
      .then((answer) => answer);
    await sleep(500);
    expect((await change(member, PASSWORD, NEW)).status).toBeLessThan(300);
    release();
    expect((await late).status).toBe(401);
    const { body } = await member.get('/accounts/current').expect(200);
    expect(body).toMatchObject({ memberships: [] });
  });
});

it('a sign-in that is being stored while the password is changed ends with it', async () => {
  const door = new Client({ connectionString: service.database.ownerUrl });
  await door.connect();
  await door.query(`
    create function wait_at_the_door() returns trigger language plpgsql as
      $$ begin perform pg_advisory_xact_lock(4711); return new; end $$;
    create trigger wait_at_the_door before insert on sign_in
      for each row when (new.device = 'phone') execute function wait_at_the_door();
    select pg_advisory_lock(4711)`);
  const phone = new Member(service);
  const late = signIn(PASSWORD)
    .set('user-agent', 'Mozilla/5.0 (Mobile)')
    .then((answer) => answer);
  await vi.waitFor(async () => {
    const { rows } = await door.query(`select from pg_locks where locktype = 'advisory' and not granted`);
    expect(rows).toHaveLength(1);
  });
  const changed = change(member, PASSWORD, NEW);
  await Promise.race([changed, sleep(1_000)]);
  await door.query(`select pg_advisory_unlock(4711)`);
  await door.query(`drop trigger wait_at_the_door on sign_in; drop function wait_at_the_door`);
  await door.end();
  expect((await changed).status).toBeLessThan(300);
  const answer = await late;
  if (answer.status === 201) {
    phone.keep(answer);
    await phone.get('/accounts/current').expect(401);
  } else expect(answer.status).toBe(401);
  await member.get('/accounts/current').expect(200);
});
