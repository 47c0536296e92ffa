import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Member } from './support/member.js';
import { startService, type TestService } from './support/service.js';

let service: TestService;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

const OWN = '/accounts/current/units';
const METRIC = { pressure: 'bar', mass: 'kg', temperature: '°C' };
const unitsOf = async (member: Member) =>
  ((await member.get('/accounts/current').expect(200)).body as { units: object }).units;

describe('the units of an account', () => {
  it('are psi, kg and °C until others are chosen', async () => {
    const member = await new Member(service).signUp();
    expect(await unitsOf(member)).toEqual({ pressure: 'psi', mass: 'kg', temperature: '°C', version: 1 });
    const { body } = await member.put(OWN, METRIC, 1).expect(200);
    expect(body).toEqual({ ...METRIC, version: 2 });
    expect(await unitsOf(member)).toEqual({ ...METRIC, version: 2 });
  });

  it('are nobody else’s', async () => {
    const [one, other] = [await new Member(service).signUp(), await new Member(service).signUp()];
    await one.put(OWN, METRIC, 1).expect(200);
    expect(await unitsOf(other)).toMatchObject({ pressure: 'psi', version: 1 });
    await new Member(service).put(OWN, METRIC, 1).expect(401);
  });

  it('chosen on two devices at once are those of one of them', async () => {
    const member = await new Member(service).signUp();
    const choices = ['psi', 'bar', 'psi', 'bar'].map((pressure) =>
      member.put(OWN, { ...METRIC, pressure }, 1),
    );
    const statuses = (await Promise.all(choices)).map(({ status }) => status);
    expect(statuses.toSorted()).toEqual([200, 412, 412, 412]);
    await member.put(OWN, METRIC).expect(428);
  });

  it('are among those that there are', async () => {
    const member = await new Member(service).signUp();
    for (const wrong of [{ pressure: 'kPa' }, { mass: null }, { temperature: 'K' }, { pressure: ['psi'] }]) {
      await member.put(OWN, { ...METRIC, ...wrong }, 1).expect(422);
    }
    expect(await unitsOf(member)).toMatchObject({ version: 1 });
  });
});
