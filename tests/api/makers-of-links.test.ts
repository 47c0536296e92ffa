import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Member, PASSWORD } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, join, type Stored, type TestTeam } from './support/team.js';

let service: TestService;
let team: TestTeam;
/** Makes links, and is to leave. */
let maker: Member;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
  maker = await join(service, team, { role: 'mechanic' });
});

const tokenIn = (path: string): string => path.split('#')[1] ?? '';

const members = async () => (await team.mechanic.get(`${team.path}/members`).expect(200)).body as Stored[];

async function membership(role: string): Promise<string> {
  return (await members()).find((member) => member['role'] === role)?.id ?? '';
}

async function makersMembership(): Promise<string> {
  const { id } = (await maker.get('/accounts/current').expect(200)).body as Stored;
  return (await members()).find((member) => member['accountId'] === id)?.id ?? '';
}

/** Whatever lets somebody in, made by the maker, as what using it answers. */
async function makeLinks(): Promise<
  Readonly<Record<string, () => Promise<{ status: number; code: string }>>>
> {
  const rider = await membership('rider');
  const coach = await membership('coach');
  const link = async (path: string, input: object) =>
    tokenIn(((await maker.post(path, input).expect(201)).body as { path: string }).path);
  const invitation = await invite({ ...team, mechanic: maker }, { role: 'mechanic' });
  const signIn = await link(`${team.path}/members/${rider}/sign-in-links`, { endsOthers: true });
  const password = await link(`${team.path}/members/${coach}/password-links`, {});
  const use = (path: string, input: object) => async () => {
    const { status, body } = await new Member(service).post(path, input);
    return { status, code: (body as { code?: string }).code ?? '' };
  };
  const newcomer = { email: maker.email, password: PASSWORD, displayName: 'Back again' };
  return {
    invitation: use('/invitations/accept', { ...newcomer, token: invitation }),
    signIn: use('/sign-ins/by-link', { token: signIn }),
    password: use('/passwords/by-link', { token: password, newPassword: 'a sentence of the maker' }),
  };
}

const GONE = { invitation: 'invitation.gone', signIn: 'sign-in-link.gone', password: 'password-link.gone' };

describe('a link that lets somebody in', () => {
  it('works as long as who made it is mechanic of the team', async () => {
    for (const use of Object.values(await makeLinks())) expect((await use()).status).toBe(201);
  });

  it('is none once who made it was taken out of the team: nobody comes back by what was kept for it', async () => {
    const links = await makeLinks();
    await team.mechanic.delete(`${team.path}/members/${await makersMembership()}`).expect(204);
    for (const [kind, use] of Object.entries(links)) {
      expect(await use()).toEqual({ status: 403, code: GONE[kind as keyof typeof GONE] });
    }
    await maker.get(team.path).expect(404);
    // Nobody's password was changed, and nobody signed out.
    await team.coach.get(team.path).expect(200);
    await team.riderMember.get(team.path).expect(200);
  });

  it('is none once who made it has another role', async () => {
    const links = await makeLinks();
    const token = await invite(team, { role: 'coach' });
    await maker
      .post('/invitations/accept', { email: maker.email, password: PASSWORD, displayName: 'Coach', token })
      .expect(201);
    for (const [kind, use] of Object.entries(links)) {
      expect(await use()).toEqual({ status: 403, code: GONE[kind as keyof typeof GONE] });
    }
  });

  it('is none where nobody is known to have made it', async () => {
    const links = await makeLinks();
    for (const table of ['invitation', 'sign_in_link']) {
      await asOwner(service, `update ${table} set created_by = null where team_id = $1`, team.id);
    }
    for (const use of Object.values(links)) expect((await use()).status).toBe(403);
  });
});
