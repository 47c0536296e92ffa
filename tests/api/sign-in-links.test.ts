import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Member, PASSWORD } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, join, type TestTeam } from './support/team.js';

let service: TestService;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

let team: TestTeam;
beforeEach(async () => {
  team = await foundTeam(service);
});

async function membershipOf(role: string): Promise<string> {
  const { body } = await team.mechanic.get(`${team.path}/members`).expect(200);
  return (body as { id: string; role: string }[]).find((member) => member.role === role)?.id ?? '';
}

const linkPath = (id: string) => `${team.path}/members/${id}/sign-in-links`;

async function riderLink(endsOthers: boolean): Promise<string> {
  const path = linkPath(await membershipOf('rider'));
  const { body } = await team.mechanic.post(path, { endsOthers }).expect(201);
  return (body as { path: string }).path.replace('/sign-in-link#', '');
}

const use = (token: string) => new Member(service).post('/sign-ins/by-link', { token });

describe('a sign-in link', () => {
  it('signs the rider in on another phone, once, and leaves the first one signed in', async () => {
    const token = await riderLink(false);
    const second = new Member(service);
    const answer = await second.post('/sign-ins/by-link', { token }).expect(201);
    expect(answer.body).toMatchObject({ memberships: [{ teamId: team.id, role: 'rider' }] });
    second.keep(answer);
    await second.get('/accounts/current').expect(200);
    await team.riderMember.get('/accounts/current').expect(200);
    await use(token).expect(403);
  });

  it('for a lost phone ends every other sign-in of the rider', async () => {
    await use(await riderLink(true)).expect(201);
    await team.riderMember.get('/accounts/current').expect(401);
  });

  it('used by several at the same moment signs one in', async () => {
    const token = await riderLink(false);
    const answers = await Promise.all([use(token), use(token), use(token)]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 403, 403]);
  });

  it('is not used up, and ends nothing, where the sign-in cannot begin', async () => {
    const token = await riderLink(true);
    await asOwner(service, 'revoke insert on sign_in from loamledger_app');
    try {
      await use(token).expect(500);
    } finally {
      await asOwner(service, 'grant insert on sign_in to loamledger_app');
    }
    await team.riderMember.get('/accounts/current').expect(200);
    await use(token).expect(201);
    await team.riderMember.get('/accounts/current').expect(401);
  });

  it('ends after its time', async () => {
    const token = await riderLink(false);
    await asOwner(service, 'update sign_in_link set expires_at = now()');
    await use(token).expect(403);
  });

  it('is made by the mechanic only, and for nobody who may do more than ride', async () => {
    const rider = await membershipOf('rider');
    for (const who of [team.coach, team.riderMember]) {
      await who.post(linkPath(rider), { endsOthers: true }).expect(403);
    }
    for (const role of ['coach', 'mechanic']) {
      await team.mechanic.post(linkPath(await membershipOf(role)), { endsOthers: true }).expect(409);
    }
  });

  it('opens no other team: not for a rider who is in one, nor for one who joined it since', async () => {
    const token = await riderLink(false);
    const other = await foundTeam(service, 'Team 2');
    const place = { email: team.riderMember.email, password: PASSWORD, displayName: 'Rider' };
    const invitation = await invite(other, { role: 'coach' });
    await team.riderMember.post('/invitations/accept', { ...place, token: invitation }).expect(201);
    await use(token).expect(403);
    await team.mechanic.post(linkPath(await membershipOf('rider')), { endsOthers: true }).expect(409);
  });

  it('ends with the membership', async () => {
    const leaving = await join(service, team, { role: 'rider', riderId: team.rider.id });
    const { body } = await team.mechanic.get(`${team.path}/members`).expect(200);
    const id = (body as { id: string }[]).at(-1)?.id ?? '';
    const made = await team.mechanic.post(linkPath(id), { endsOthers: false }).expect(201);
    await team.mechanic.delete(`${team.path}/members/${id}`).expect(204);
    await use((made.body as { path: string }).path.replace('/sign-in-link#', '')).expect(403);
    await leaving.get(`${team.path}/bikes`).expect(404);
  });
});
