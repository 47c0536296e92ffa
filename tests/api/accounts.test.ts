import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Member, PASSWORD } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, join, type Stored, type TestTeam } from './support/team.js';

let service: TestService;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

const person = (member: Member, more: object = {}) => ({
  email: member.email,
  password: PASSWORD,
  displayName: 'Person',
  ...more,
});
const signIn = (member: Member, password = PASSWORD, email = member.email) =>
  member.post('/sign-ins', { email, password });

describe('an account', () => {
  it('is signed in once it is made, by a cookie that scripts and other sites cannot use', async () => {
    const member = new Member(service);
    const answer = await member.post('/accounts', person(member)).expect(201);
    const [cookie = ''] = answer.headers['set-cookie'] as unknown as string[];
    expect(cookie).toMatch(/^loamledger_sign_in=[\w-]{43};/);
    for (const flag of ['HttpOnly', 'SameSite=Strict', 'Path=/', 'Expires=']) expect(cookie).toContain(flag);
    member.keep(answer);
    const { body } = await member.get('/accounts/current').expect(200);
    expect(body).toMatchObject({ email: member.email, memberships: [] });
  });

  it('is one for each e-mail address, in capitals or not', async () => {
    const member = await new Member(service).signUp();
    const again = person(member, { email: ` ${member.email.toUpperCase()} ` });
    const { body } = await member.post('/accounts', again).expect(409);
    expect(body).toMatchObject({ code: 'sign-up.email-taken' });
    await signIn(new Member(service), PASSWORD, member.email.toUpperCase()).expect(201);
  });

  it('has a password with its spaces, and the same however a keyboard writes its letters', async () => {
    const member = new Member(service);
    const password = ' gravier m\u00e9lang\u00e9 ';
    await member.post('/accounts', person(member, { password })).expect(201);
    await signIn(member, password).expect(201);
    await signIn(member, password.normalize('NFD')).expect(201);
    await signIn(member, password.trim()).expect(401);
  });

  it('cannot be made by a stranger where sign-up is closed', async () => {
    const closed = await startService({ OPEN_SIGN_UP: 'false' });
    try {
      const member = new Member(closed);
      await member.post('/accounts', person(member)).expect(403);
    } finally {
      await closed.stop();
    }
  });

  it.each([
    ['email', 'nobody'],
    ['email', '\ud800'],
    ['email', 'a\ud800@team.example'],
    ['email', `${'a'.repeat(300)}@team.example`],
    ['password', 'short'],
    ['password', 'x'.repeat(201)],
    ['displayName', ''],
    ['displayName', 'a\u0000b'],
  ])('is refused for %s %s, naming the field', async (field, value) => {
    const member = new Member(service);
    const { body } = await member.post('/accounts', person(member, { [field]: value })).expect(422);
    expect((body as { errors: { field: string }[] }).errors.map((error) => error.field)).toContain(field);
  });
});

describe('an invitation', () => {
  let team: TestTeam;
  beforeEach(async () => {
    team = await foundTeam(service);
  });

  it('takes one person into the team, once', async () => {
    const token = await invite(team, { role: 'coach' });
    const first = new Member(service);
    const { body } = await first.post('/invitations/accept', person(first, { token })).expect(201);
    expect(body).toMatchObject({ memberships: [{ teamId: team.id, role: 'coach' }] });
    const second = new Member(service);
    await second.post('/invitations/accept', person(second, { token })).expect(403);
  });

  const accounts = async () => {
    const [row] = await asOwner<{ number: number }>(service, 'select count(*)::int as number from account');
    return row?.number ?? 0;
  };
  /** All send at once what each has got ready: who is taken, and what the others are told. */
  const rush = async (rivals: readonly Member[], token: string) => {
    const answers = await Promise.all(
      rivals.map((rival) => rival.post('/invitations/accept', person(rival, { token }))),
    );
    const taken = answers.filter(({ status }) => status === 201);
    const refused = answers.filter(({ status }) => status !== 201);
    return { taken, codes: refused.map(({ body }) => (body as { code: string }).code) };
  };

  it('used by several at the same moment takes one of them, and makes nobody else an account', async () => {
    for (let round = 0; round < 5; round += 1) {
      const token = await invite(team, { role: 'coach' });
      const before = await accounts();
      const rivals = Array.from({ length: 6 }, () => new Member(service));
      const { taken, codes } = await rush(rivals, token);
      expect(taken).toHaveLength(1);
      expect(codes).toEqual(Array(5).fill('invitation.gone'));
      expect(await accounts()).toBe(before + 1);
      const signIns = await Promise.all(rivals.map((rival) => signIn(rival)));
      expect(signIns.filter(({ status }) => status === 201)).toHaveLength(1);
    }
  });

  it('sent twice at the same moment by one person makes one account', async () => {
    const token = await invite(team, { role: 'coach' });
    const before = await accounts();
    const member = new Member(service);
    const { taken, codes } = await rush([member, member, member], token);
    expect(taken).toHaveLength(1);
    for (const code of codes) expect(['invitation.gone', 'sign-up.email-taken']).toContain(code);
    expect(await accounts()).toBe(before + 1);
  });

  it('used by several with accounts at the same moment takes one of them and leaves the others as they were', async () => {
    const token = await invite(team, { role: 'coach' });
    const rivals = await Promise.all(Array.from({ length: 4 }, () => new Member(service).signUp()));
    const before = await accounts();
    const { taken, codes } = await rush(rivals, token);
    expect(taken).toHaveLength(1);
    expect(codes).toEqual(Array(3).fill('invitation.gone'));
    expect(await accounts()).toBe(before);
    const now = await Promise.all(rivals.map((rival) => signIn(rival).expect(201)));
    const inTeams = now.flatMap(({ body }) => (body as { memberships: unknown[] }).memberships);
    expect(inTeams).toHaveLength(1);
  });

  it('ends after its time', async () => {
    const token = await invite(team, { role: 'coach' });
    await asOwner(service, `update invitation set expires_at = now() where used_at is null`);
    const late = new Member(service);
    await late.post('/invitations/accept', person(late, { token })).expect(403);
  });

  it('for a rider names one of this team', async () => {
    const path = `${team.path}/invitations`;
    await team.mechanic.post(path, { role: 'rider' }).expect(422);
    const other = await foundTeam(service, 'Team 2');
    const theirs = { role: 'rider', riderId: other.rider.id };
    const { status } = await team.mechanic.post(path, theirs);
    expect([404, 409]).toContain(status);
  });

  it('lets an existing account in with its password only', async () => {
    const member = await new Member(service).signUp();
    const token = await invite(team, { role: 'coach' });
    const guess = person(member, { token, password: 'another sentence' });
    await new Member(service).post('/invitations/accept', guess).expect(401);
    const { body } = await new Member(service)
      .post('/invitations/accept', person(member, { token }))
      .expect(201);
    expect((body as { memberships: unknown[] }).memberships).toHaveLength(1);
  });

  it('does not turn the last mechanic into something else', async () => {
    const token = await invite(team, { role: 'coach' });
    const { body } = await team.mechanic.post('/invitations/accept', person(team.mechanic, { token }));
    expect(body).toMatchObject({ code: 'member.last-mechanic' });
    await team.mechanic.post(`${team.path}/invitations`, { role: 'coach' }).expect(201);
  });
});

describe('a team', () => {
  it('is made once under one Idempotency-Key, and the key is for no other team', async () => {
    const member = await new Member(service).signUp();
    const make = (name: string) => member.post('/teams', { name }).set('idempotency-key', 'team');
    const [first, second] = await Promise.all([make('Team 1'), make('Team 1')]);
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(second.body).toEqual(first.body);
    await make('Another').expect(409);
    const { body } = await member.get('/accounts/current');
    expect((body as { memberships: unknown[] }).memberships).toHaveLength(1);
  });

  it('is not entered again by who was taken out of it and repeats the request that made it', async () => {
    const founder = await new Member(service).signUp();
    const make = () => founder.post('/teams', { name: 'Team 1' }).set('idempotency-key', 'team');
    const { id } = (await make().expect(201)).body as Stored;
    const path = `/teams/${id}`;
    const successor = await join(service, { path, mechanic: founder }, { role: 'mechanic' });
    const members = (await successor.get(`${path}/members`).expect(200)).body as Stored[];
    await successor.delete(`${path}/members/${members[0]?.id}`).expect(204);
    await make();
    await founder.get(path).expect(404);
  });

  it('loses a member at once, but never its last mechanic', async () => {
    const team = await foundTeam(service);
    const members = (await team.mechanic.get(`${team.path}/members`).expect(200)).body as Stored[];
    const of = (role: string) => members.find((member) => member['role'] === role)?.id;
    await team.mechanic.delete(`${team.path}/members/${of('coach')}`).expect(204);
    await team.coach.get(team.path).expect(404);
    await team.mechanic.delete(`${team.path}/members/${of('mechanic')}`).expect(409);
    await team.mechanic.delete(`${team.path}/members/${of('coach')}`).expect(404);
  });

  it('keeps one of two mechanics who take each other out at the same moment', async () => {
    const team = await foundTeam(service);
    const second = await join(service, team, { role: 'mechanic' });
    const members = (await second.get(`${team.path}/members`).expect(200)).body as Stored[];
    const mechanics = members.filter((member) => member['role'] === 'mechanic');
    await Promise.all([
      team.mechanic.delete(`${team.path}/members/${mechanics[1]?.id}`),
      second.delete(`${team.path}/members/${mechanics[0]?.id}`),
    ]);
    const left = await asOwner(
      service,
      `select role from member where team_id = '${team.id}' and role = 'mechanic'`,
    );
    expect(left).toHaveLength(1);
  });

  it('can be one of several of a person, with another role in each', async () => {
    const [one, two] = [await foundTeam(service, 'A'), await foundTeam(service, 'B')];
    const token = await invite(two, { role: 'coach' });
    const { body } = await one.mechanic
      .post('/invitations/accept', person(one.mechanic, { token }))
      .expect(201);
    expect(body).toMatchObject({ memberships: [{ role: 'mechanic' }, { role: 'coach' }] });
  });
});
