import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Member, PASSWORD } from './support/member.js';
import { asOwner, justTried } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, join, script, type TestTeam } from './support/team.js';

const NEW = 'another sentence nobody guesses';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

const signIn = ({ email }: Member, password: string) =>
  new Member(service).post('/sign-ins', { email, password });
const change = (member: Member, oldPassword: string, newPassword = NEW) =>
  member.post('/passwords/change', { oldPassword, newPassword });

/** The person on another device. */
async function elsewhere(member: Member): Promise<Member> {
  const other = new Member(service);
  other.keep(await signIn(member, PASSWORD).expect(201));
  return other;
}

describe('a change of the password', () => {
  it('asks for the old one, keeps this sign-in and ends every other', async () => {
    const member = await new Member(service).signUp();
    const other = await elsewhere(member);
    expect((await change(member, PASSWORD).expect(200)).body).toEqual({ inForce: [] });
    await member.get('/accounts/current').expect(200);
    await other.get('/accounts/current').expect(401);
    await signIn(member, PASSWORD).expect(401);
    await signIn(member, NEW).expect(201);
  });

  it('changes nothing without the old one, whose guesses are slowed down as those at the door', async () => {
    const member = await new Member(service).signUp();
    const other = await elsewhere(member);
    const { body } = await change(member, 'a guess').expect(422);
    expect(body).toMatchObject({ code: 'password.wrong', errors: [{ field: 'oldPassword', given: null }] });
    for (let tries = 0; tries < 4; tries += 1) await change(member, 'a guess').expect(422);
    await justTried(service);
    await change(member, PASSWORD).expect(429);
    await justTried(service);
    await signIn(member, PASSWORD).expect(429);
    await other.get('/accounts/current').expect(200);
  });

  it('takes a password that is long enough only', async () => {
    const member = await new Member(service).signUp();
    for (const short of ['', 'nine char', 'x'.repeat(201)]) await change(member, PASSWORD, short).expect(422);
    await signIn(member, PASSWORD).expect(201);
  });

  it('is nobody’s who is not signed in, and no script’s', async () => {
    await change(new Member(service), PASSWORD).expect(401);
    await change(await script(service, team, ['read', 'edit-records']), PASSWORD).expect(403);
  });

  it('touches no other account', async () => {
    await change(team.coach, PASSWORD).expect(200);
    for (const other of [team.mechanic, team.riderMember]) {
      await other.get('/accounts/current').expect(200);
      await signIn(other, PASSWORD).expect(201);
    }
  });
});

describe('API tokens of who changes the password', () => {
  /** The person makes a token in this team. */
  async function tokenOf(maker: Member, of: TestTeam): Promise<Member> {
    return script(service, { path: of.path, mechanic: maker }, ['read']);
  }
  const inForce = async (member: Member) =>
    ((await member.get('/accounts/current/tokens').expect(200)).body as { inForce: unknown }).inForce;

  it('stay unless they are to end as well; both answers tell how many there are, in which team', async () => {
    const own = await tokenOf(team.mechanic, team);
    await tokenOf(team.mechanic, team);
    const two = [{ teamId: team.id, teamName: 'Team 1', tokens: 2 }];
    expect(await inForce(team.mechanic)).toEqual(two);
    const kept = await change(team.mechanic, PASSWORD).expect(200);
    expect(kept.body).toEqual({ inForce: two });
    await own.get(`${team.path}/runs`).expect(200);
    const ended = await team.mechanic
      .post('/passwords/change', { oldPassword: NEW, newPassword: PASSWORD, revokesTokens: true })
      .expect(200);
    expect(ended.body).toEqual({ inForce: [] });
    expect(await inForce(team.mechanic)).toEqual([]);
    await own.get(`${team.path}/runs`).expect(401);
    expect((await team.mechanic.get(`${team.path}/tokens`).expect(200)).body).toEqual([]);
  });

  it('end in every team of theirs, with an entry in its trail, and nobody else’s do', async () => {
    const other = await foundTeam(service, 'Team 2');
    const place = { email: team.mechanic.email, password: PASSWORD, displayName: 'Mechanic' };
    const token = await invite(other, { role: 'mechanic' });
    team.mechanic.keep(await team.mechanic.post('/invitations/accept', { ...place, token }).expect(201));
    const [here, there] = [await tokenOf(team.mechanic, team), await tokenOf(team.mechanic, other)];
    const theirs = await tokenOf(other.mechanic, other);
    expect(await inForce(team.mechanic)).toEqual([
      { teamId: team.id, teamName: 'Team 1', tokens: 1 },
      { teamId: other.id, teamName: 'Team 2', tokens: 1 },
    ]);
    expect(await inForce(other.mechanic)).toEqual([{ teamId: other.id, teamName: 'Team 2', tokens: 1 }]);
    const { body: account } = await team.mechanic.get('/accounts/current').expect(200);
    const wish = { oldPassword: PASSWORD, newPassword: NEW, revokesTokens: true };
    await team.mechanic.post('/passwords/change', wish).expect(200);
    await here.get(`${team.path}/runs`).expect(401);
    await there.get(`${other.path}/runs`).expect(401);
    await theirs.get(`${other.path}/runs`).expect(200);
    for (const { path, mechanic } of [team, other]) {
      const { body } = await mechanic.get(`${path}/audit?kind=api-token`).expect(200);
      const [entry] = (body as { items: object[] }).items;
      expect(entry).toMatchObject({
        action: 'changed',
        fields: ['revoked_at'],
        accountId: (account as { id: string }).id,
        client: 'sign-in',
        requestId: expect.any(String) as string,
      });
    }
  });

  it('are left as they are where the old password is wrong, and are nobody’s to count by a token', async () => {
    const own = await tokenOf(team.mechanic, team);
    const wish = { oldPassword: 'a guess', newPassword: NEW, revokesTokens: true };
    await team.mechanic.post('/passwords/change', wish).expect(422);
    await own.get(`${team.path}/runs`).expect(200);
    await own.get('/accounts/current/tokens').expect(403);
    await new Member(service).get('/accounts/current/tokens').expect(401);
    await team.mechanic.post('/passwords/change', { ...wish, revokesTokens: 'yes' }).expect(422);
  });

  it('end by a link for a new password too, where that is asked', async () => {
    const second = await join(service, team, { role: 'mechanic' });
    const reader = await tokenOf(second, team);
    const { body } = await team.mechanic.get(`${team.path}/members`).expect(200);
    const place = (body as Membership[]).filter(({ role }) => role === 'mechanic').at(-1);
    for (const [revokesTokens, status] of [
      [false, 200],
      [true, 401],
    ] as const) {
      const { body: link } = await team.mechanic.post(linkPath(place?.id ?? '')).expect(201);
      const token = (link as { path: string }).path.replace('/new-password#', '');
      await new Member(service)
        .post('/passwords/by-link', { token, newPassword: NEW, revokesTokens })
        .expect(201);
      await reader.get(`${team.path}/runs`).expect(status);
    }
    const { body: trail } = await team.mechanic.get(`${team.path}/audit?kind=api-token`).expect(200);
    expect((trail as { items: object[] }).items[0]).toMatchObject({ action: 'changed', client: 'sign-in' });
  });
});

interface Membership {
  readonly id: string;
  readonly role: string;
}
async function membershipOf(role: string): Promise<string> {
  const { body } = await team.mechanic.get(`${team.path}/members`).expect(200);
  return (body as Membership[]).find((member) => member.role === role)?.id ?? '';
}
const linkPath = (id: string) => `${team.path}/members/${id}/password-links`;
async function linkFor(role: string): Promise<string> {
  const { body } = await team.mechanic.post(linkPath(await membershipOf(role))).expect(201);
  return (body as { path: string }).path.replace('/new-password#', '');
}
const use = (token: string, newPassword = NEW) =>
  new Member(service).post('/passwords/by-link', { token, newPassword });

describe('a link for a new password', () => {
  it.each(['coach', 'rider'])(
    'sets it for a %s, once, signs in and ends all other sign-ins',
    async (role) => {
      const member = role === 'coach' ? team.coach : team.riderMember;
      const token = await linkFor(role);
      const answer = await use(token).expect(201);
      expect(answer.body).toMatchObject({ email: member.email, memberships: [{ teamId: team.id, role }] });
      await member.get('/accounts/current').expect(401);
      member.keep(answer);
      await member.get(`${team.path}/bikes`).expect(200);
      await signIn(member, PASSWORD).expect(401);
      await signIn(member, NEW).expect(201);
      await use(token, 'a third sentence').expect(403);
      await signIn(member, NEW).expect(201);
    },
  );

  it('used by several at the same moment sets the password of one', async () => {
    const token = await linkFor('coach');
    const words = ['the first sentence', 'the second sentence', 'the third sentence'];
    const answers = await Promise.all(words.map((word) => use(token, word)));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 403, 403]);
    const right = await Promise.all(words.map((word) => signIn(team.coach, word)));
    expect(right.map(({ status }) => status)).toEqual(
      answers.map(({ status }) => (status === 201 ? 201 : 401)),
    );
  });

  it('ends after its time, and with the membership', async () => {
    const late = await linkFor('coach');
    await asOwner(service, 'update sign_in_link set expires_at = now()');
    await use(late).expect(403);
    const left = await linkFor('coach');
    await team.mechanic.delete(`${team.path}/members/${await membershipOf('coach')}`).expect(204);
    await use(left).expect(403);
    await signIn(team.coach, PASSWORD).expect(201);
  });

  it('is none to sign in with, and a link to sign in sets no password', async () => {
    const token = await linkFor('rider');
    await new Member(service).post('/sign-ins/by-link', { token }).expect(403);
    const path = `${team.path}/members/${await membershipOf('rider')}/sign-in-links`;
    const { body } = await team.mechanic.post(path, { endsOthers: false }).expect(201);
    await use((body as { path: string }).path.replace('/sign-in-link#', '')).expect(403);
    await use(token).expect(201);
  });

  it('is made by a mechanic, for others of the team and not for oneself', async () => {
    const coach = await membershipOf('coach');
    for (const who of [team.coach, team.riderMember]) await who.post(linkPath(coach)).expect(403);
    const own = await team.mechanic.post(linkPath(await membershipOf('mechanic'))).expect(409);
    expect(own.body).toMatchObject({ code: 'password-link.own' });
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic.post(linkPath(coach)).expect(404);
    await other.mechanic.post(linkPath(coach).replace(team.id, other.id)).expect(404);
  });

  it('opens no other team: not for who is in one, nor for who joined it since', async () => {
    const token = await linkFor('coach');
    const other = await foundTeam(service, 'Team 2');
    const place = { email: team.coach.email, password: PASSWORD, displayName: 'Coach' };
    const invitation = await invite(other, { role: 'rider', riderId: other.rider.id });
    await team.coach.post('/invitations/accept', { ...place, token: invitation }).expect(201);
    await use(token).expect(403);
    const { body } = await team.mechanic.post(linkPath(await membershipOf('coach'))).expect(409);
    expect(body).toMatchObject({ code: 'password-link.in-another-team' });
    await signIn(team.coach, PASSWORD).expect(201);
  });

  it('and its use are in the audit trail, and its token nowhere in the database', async () => {
    const token = await linkFor('coach');
    await use(token).expect(201);
    const { body } = await team.mechanic.get(`${team.path}/audit?kind=sign-in-link`).expect(200);
    const actions = (body as { items: { action: string }[] }).items.map(({ action }) => action);
    expect(actions).toEqual(['changed', 'added']);
    expect(JSON.stringify(await asOwner(service, 'select * from sign_in_link'))).not.toContain(token);
  });
});
