import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { BIKE, FORK, foundTeam, SETUP, SHOCK, type Stored, type TestTeam } from './support/team.js';

interface Offered extends Stored {
  readonly bikeId: string;
}
interface Refused {
  readonly code: string;
  readonly errors: readonly { field: string; given: string; allowed: string }[];
}

let service: TestService;
let team: TestTeam;
let other: TestTeam;
let second: Stored;

beforeAll(async () => {
  service = await startService();
  [team, other] = [await foundTeam(service), await foundTeam(service, 'Team 2')];
  const { mechanic, path, rider } = team;
  const make = async (things: string, body: object) =>
    (await mechanic.post(`${path}/${things}`, body).expect(201)).body as Stored;
  const fork = await make('spring-units', { ...FORK, name: 'Fork 2' });
  const shock = await make('spring-units', { ...SHOCK, name: 'Shock 2' });
  second = await make('bikes', {
    ...BIKE,
    name: 'Bike 2',
    riderId: rider.id,
    forkUnitId: fork.id,
    shockUnitId: shock.id,
  });
  for (const bike of [team.bike, second]) {
    await make('setups', { ...SETUP, bikeId: bike.id });
    for (const travelLeftMm of [30, 35, 38]) {
      const run = { bikeId: bike.id, trackId: team.track.id, day: '2026-05-09', fork: { travelLeftMm } };
      await make('runs', run);
    }
  }
  await other.mechanic.post(`${other.path}/setups`, { ...SETUP, bikeId: other.bike.id }).expect(201);
});
afterAll(() => service.stop());

const offered = async (of = team, query = ''): Promise<Offered[]> =>
  (
    (await of.mechanic.get(`${of.path}/baselines?trackId=${of.track.id}${query}`).expect(200)).body as {
      items: Offered[];
    }
  ).items;
const take = (ids: readonly string[], more: object = {}, by = team.coach) =>
  by.post(`${team.path}/baselines/take`, { baselines: ids.map((baselineId) => ({ baselineId })), ...more });
const setupsOf = async () =>
  ((await team.mechanic.get(`${team.path}/setups?limit=500`).expect(200)).body as { items: Stored[] }).items;

describe('several baselines', () => {
  it('are refused together where one does not hold any more, which is named', async () => {
    const [one, two] = await offered();
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: second.id }).expect(201);
    const before = await setupsOf();
    const stale = [one, two].findIndex((baseline) => baseline?.bikeId === second.id);
    const { body } = await take([one?.id ?? '', two?.id ?? '']).expect(409);
    const { code, errors } = body as Refused;
    expect(code).toBe('baseline.not-all-taken');
    expect(errors.map(({ field }) => field)).toEqual([`baselines.${stale}.baselineId`]);
    expect(errors[0]?.allowed).toContain('still holds');
    expect(await setupsOf()).toEqual(before);
  });

  it('are taken together, each with its decision, in the air of the venue that they were offered for', async () => {
    const items = await offered(team, '&airTemperatureC=2&condition=wet');
    const { body } = await take(
      items.map(({ id }) => id),
      { reason: 'Race weekend.' },
    ).expect(201);
    const made = (body as { items: (Stored & { bikeId: string })[] }).items;
    expect(made.map(({ bikeId }) => bikeId)).toEqual(items.map(({ bikeId }) => bikeId));
    const decisions = (await team.mechanic.get(`${team.path}/decisions`).expect(200)).body as {
      items: { toSetupId: string; baselineId: string; reason: string; expected: object | null }[];
    };
    for (const [i, { id }] of made.entries()) {
      expect(decisions.items.find(({ toSetupId }) => toSetupId === id)).toMatchObject({
        baselineId: items[i]?.id,
        reason: 'Race weekend.',
        expected: { fork: { sagPct: expect.any(Number) as number } },
      });
    }
  });

  it('are taken once, however often the request is repeated', async () => {
    for (const bike of [team.bike, second]) {
      await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: bike.id }).expect(201);
    }
    const ids = (await offered()).map(({ id }) => id);
    const before = (await setupsOf()).length;
    const send = () => take(ids).set('idempotency-key', 'weekend');
    const answers = await Promise.all([send(), send(), send()]);
    for (const { status, body } of answers) expect([status, body]).toEqual([201, answers[0]?.body]);
    expect((await setupsOf()).length).toBe(before + ids.length);
  });

  it('are of as many bikes: two of one bike are refused', async () => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    const one = async (query: string) =>
      (await offered(team, query)).find(({ bikeId }) => bikeId === team.bike.id)?.id ?? '';
    const [cold, warm] = [await one('&airTemperatureC=0'), await one('&airTemperatureC=30')];
    expect(cold).not.toBe(warm);
    const before = await setupsOf();
    const { body } = await take([cold, warm]).expect(409);
    expect((body as Refused).errors).toMatchObject([{ field: 'baselines.1.baselineId', given: warm }]);
    expect(await setupsOf()).toEqual(before);
  });

  it('are taken by two at once in opposite order, round after round: neither waits for the other for ever', async () => {
    for (const round of [1, 2, 3, 4, 5]) {
      for (const bike of [team.bike, second]) {
        await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: bike.id }).expect(201);
      }
      const ids = (await offered()).map(({ id }) => id);
      expect(ids).toHaveLength(2);
      const before = (await setupsOf()).length;
      const answers = await Promise.all([take(ids), take(ids.toReversed())]);
      // The later one finds what it was offered taken, also where it had looked before.
      expect(answers.map(({ status }) => status).toSorted(), `round ${round}`).toEqual([201, 409]);
      expect((await setupsOf()).length).toBe(before + ids.length);
    }
  });

  it('is taken once where two take the same one at the same moment', async () => {
    for (const round of [1, 2, 3]) {
      await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: second.id }).expect(201);
      const id = (await offered()).find(({ bikeId }) => bikeId === second.id)?.id ?? '';
      const before = (await setupsOf()).length;
      const press = () => team.coach.post(`${team.path}/baselines/${id}/take`, {}).then();
      const answers = await Promise.all([press(), press(), press()]);
      expect(answers.map(({ status }) => status).toSorted(), `round ${round}`).toEqual([201, 409, 409]);
      expect((await setupsOf()).length).toBe(before + 1);
    }
  });

  it('of another team do not exist, and are not taken beside the own ones', async () => {
    const [own] = await offered();
    const [foreign] = await offered(other);
    const before = await setupsOf();
    await take([own?.id ?? '', foreign?.id ?? '']).expect(404);
    expect(await setupsOf()).toEqual(before);
  });

  it('are not for a rider to take, and not none or too many', async () => {
    const [own] = await offered();
    await take([own?.id ?? ''], {}, team.riderMember).expect(403);
    await take([]).expect(422);
    await take(Array.from({ length: 51 }, () => own?.id ?? '')).expect(422);
    await take(['x']).expect(422);
  });
});
