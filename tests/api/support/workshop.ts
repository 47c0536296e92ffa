import { SETUP, type Stored, type TestTeam } from './team.js';

/**
 * What a workshop and a coach enter beside set-ups and runs: an interval and a service of the fork, a new set-up with
 * its work order, counted spacers, a session planned. Ids by the names that paths give the things.
 */
export async function enterWorkshop({ mechanic, path, bike, track, rider, fork }: Omit<TestTeam, 'id'>) {
  const create = async (things: string, body: object) =>
    (await mechanic.post(`${path}/${things}`, body).expect(201)).body as Stored;
  await create(`spring-units/${fork.id}/care`, { serviceIntervalHours: 50 });
  const entry = { kind: 'service', day: '2026-05-01', doneBy: 'Workshop' };
  const service = await create(`spring-units/${fork.id}/service-entries`, entry);
  const setup = await create('setups', {
    ...SETUP,
    fork: { ...SETUP.fork, spacers: 0 },
    bikeId: bike.id,
  });
  const order = await create('work-orders', { setupId: setup.id });
  const planned = { trackId: track.id, day: '2026-05-09', startsAt: '09:30', riderIds: [rider.id] };
  const session = await create('planned-sessions', planned);
  const { body } = await mechanic.get(`${path}/spacer-movements`).expect(200);
  return new Map([
    ['spring-units', fork.id],
    ['service-entries', service.id],
    ['work-orders', order.id],
    ['work-steps', (order['steps'] as Stored[])[0]?.id ?? ''],
    ['planned-sessions', session.id],
    ['spacer-movements', (body as { items: Stored[] }).items[0]?.id ?? ''],
  ]);
}
