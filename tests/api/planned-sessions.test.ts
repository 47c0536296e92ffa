import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';

let service: TestService;
let team: TestTeam;
let other: TestTeam;
let plan: Stored;

beforeAll(async () => {
  service = await startService();
  [team, other] = [await foundTeam(service), await foundTeam(service, 'Team 2')];
  const body = planBody(team, await twoSetups(team));
  plan = (await team.mechanic.post(`${team.path}/test-plans`, body).expect(201)).body as Stored;
});
afterAll(() => service.stop());

const session = (more: object = {}, of = team) => ({
  trackId: of.track.id,
  day: '2026-05-09',
  startsAt: '09:30',
  riderIds: [of.rider.id],
  ...more,
});
const planSession = async (more: object = {}) =>
  (await team.coach.post(`${team.path}/planned-sessions`, session(more)).expect(201)).body as Stored;
const listed = async (query = '', by = team.coach) =>
  ((await by.get(`${team.path}/planned-sessions?limit=500&${query}`).expect(200)).body as { items: Stored[] })
    .items;

describe('a planned session', () => {
  it('says when, where, who and what is ridden', async () => {
    const made = await planSession({ testPlanId: plan.id, note: 'Two slow runs first.' });
    const stored = { ...session(), testPlanId: plan.id, note: 'Two slow runs first.', version: 1 };
    expect(made).toMatchObject(stored);
    const { body } = await team.coach.get(`${team.path}/planned-sessions/${made.id}`).expect(200);
    expect(body).toEqual(made);
    expect(await planSession()).toMatchObject({ testPlanId: null, note: '' });
  });

  it('is changed from the version that was read, and taken off the plan', async () => {
    const { id } = await planSession();
    const at = `${team.path}/planned-sessions/${id}`;
    await team.coach.put(at, session({ startsAt: '14:00' })).expect(428);
    const { body } = await team.coach.put(at, session({ startsAt: '14:00' }), 1).expect(200);
    expect(body).toMatchObject({ startsAt: '14:00', version: 2 });
    await team.mechanic.put(at, session({ startsAt: '15:00' }), 1).expect(412);
    await team.coach.delete(at).expect(204);
    await team.coach.get(at).expect(404);
    await team.coach.delete(at).expect(404);
  });

  it('is found by track and days, its ends included', async () => {
    for (const day of ['2027-06-04', '2027-06-05', '2027-06-06']) await planSession({ day });
    const days = async (query: string) => (await listed(query)).map(({ day }) => day).toSorted();
    const weekend = `trackId=${team.track.id}&fromDay=2027-06-05&toDay=2027-06-06`;
    expect(await days(weekend)).toEqual(['2027-06-05', '2027-06-06']);
    expect(await days('fromDay=2027-06-06')).toEqual(['2027-06-06']);
    expect(await days('fromDay=2027-06-07')).toEqual([]);
    await team.coach.get(`${team.path}/planned-sessions?fromDay=soon`).expect(422);
  });

  it('is seen by the riders who are in it, and planned by no rider', async () => {
    const { body: mate } = await team.mechanic
      .post(`${team.path}/riders`, { name: 'Rider B', readyMassKg: 70 })
      .expect(201);
    const theirs = await planSession({ riderIds: [(mate as Stored).id] });
    const both = await planSession({ riderIds: [(mate as Stored).id, team.rider.id] });
    const seen = (await listed('', team.riderMember)).map(({ id }) => id);
    expect(seen).toContain(both.id);
    expect(seen).not.toContain(theirs.id);
    await team.riderMember.get(`${team.path}/planned-sessions/${theirs.id}`).expect(404);
    await team.riderMember.post(`${team.path}/planned-sessions`, session()).expect(403);
  });

  it('is stored once where the request is repeated', async () => {
    const body = session({ day: '2028-01-01' });
    const send = () =>
      team.coach.post(`${team.path}/planned-sessions`, body).set('idempotency-key', 'one session');
    for (const { status } of await Promise.all([send(), send()])) expect(status).toBe(201);
    expect(await listed('fromDay=2028-01-01')).toHaveLength(1);
  });

  it('takes no clock that is none, no empty field of riders, and no plan for another track', async () => {
    const refused = async (more: object) =>
      (
        (await team.coach.post(`${team.path}/planned-sessions`, session(more)).expect(422)).body as {
          errors: { field: string }[];
        }
      ).errors.map(({ field }) => field);
    for (const startsAt of ['24:00', '9:30', '09:60', '', 930, null]) {
      expect(await refused({ startsAt })).toEqual(['startsAt']);
    }
    expect(await refused({ riderIds: [] })).toEqual(['riderIds']);
    const { body: track } = await team.mechanic
      .post(`${team.path}/tracks`, { name: 'Scree', altitudeM: 900 })
      .expect(201);
    expect(await refused({ trackId: (track as Stored).id, testPlanId: plan.id })).toEqual(['testPlanId']);
  });

  it("names nothing of another team's, and is not theirs to see", async () => {
    for (const more of [{ trackId: other.track.id }, { riderIds: [team.rider.id, other.rider.id] }]) {
      await team.coach.post(`${team.path}/planned-sessions`, session(more)).expect(404);
    }
    const { id } = await planSession();
    const at = `${other.path}/planned-sessions/${id}`;
    await other.coach.get(at).expect(404);
    await other.coach.put(at, session({}, other), 1).expect(404);
    await other.coach.delete(at).expect(404);
    await team.coach.get(`${team.path}/planned-sessions/${id}`).expect(200);
  });
});
