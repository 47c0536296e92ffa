import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { foundTeam, SETUP, type TestTeam } from '../api/support/team.js';
import { type DurablePostgres, startDurable } from './durable-postgres.js';
import { waitUntil } from './house.js';
import { migrate, type SeveralServices, startServices } from './several-services.js';
import { marksOf, startWriters, storedMarks, type StubbornWriters } from './stubborn-writers.js';

const SERVICES = 3;
const WRITERS = 8;
const SERVICE_KILLS = 50;
const SERVER_KILLS = 50;
const BACKEND_KILLS = 100;
/** Writes that must have been answered between one kill and the next. */
const PROGRESS = 3;
const PROGRESS_LIMIT_MS = 60_000;
/** So that a kill meets a write at any point of its way. */
const JITTER_MS = 40;

let database: DurablePostgres;
let services: SeveralServices;
let team: TestTeam;
beforeAll(async () => {
  database = await startDurable();
  await migrate(database.url);
  services = await startServices(database.url, SERVICES);
  team = await foundTeam({ url: `${services.addresses[0]}/api/v1` });
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
});
afterAll(async () => {
  await services.stop();
  await database.clear();
});

it(
  `keeps every acknowledged write once through ${SERVICE_KILLS} kills of the service, ${SERVER_KILLS} of Postgres and ` +
    `${BACKEND_KILLS} of single connections' processes`,
  { timeout: 900_000 },
  async () => {
    const start = Date.now();
    const before = await countOfAll();
    const writers = startWriters(team, services.addresses, WRITERS);
    await Promise.all([killServices(writers), killDatabase(writers)]);
    await writers.stop();
    const { acknowledged, wrong } = writers;
    console.log(
      `${acknowledged.length} writes acknowledged after ${writers.tries()} tries and ` +
        `${SERVICE_KILLS + SERVER_KILLS + BACKEND_KILLS} kills in ${Math.round((Date.now() - start) / 1e3)} s`,
    );
    expect(wrong.slice(0, 10)).toEqual([]);
    // Every write was sent until it was answered, so what was answered is all there may be: nothing lost, nothing more.
    const marks = acknowledged.flatMap(marksOf);
    expect(await storedMarks((statement) => database.query(statement))).toEqual(marks.toSorted());
    const ids = acknowledged.filter(({ kind }) => kind !== 'file').map(({ answer }) => String(answer['id']));
    expect(await storedIds(ids)).toBe(ids.length);
    const runs = acknowledged.filter(({ kind }) => kind === 'run' || kind === 'file').flatMap(marksOf).length;
    const after = await countOfAll();
    expect(after.readings).toBe(runs);
    expect(after.setups - before.setups).toBe(acknowledged.filter(({ kind }) => kind === 'setup').length);
    expect(after.answers - before.answers).toBe(acknowledged.length);
    expect(await auditedOtherThanOnce()).toBe(0);
  },
);

/** Kills a service as soon as enough was written since the last kill, while the others go on. */
async function killServices(writers: StubbornWriters): Promise<void> {
  for (let kills = 0; kills < SERVICE_KILLS; kills += 1) {
    await progress(writers);
    await services.killAndRestart(kills % SERVICES);
  }
}

async function killDatabase(writers: StubbornWriters): Promise<void> {
  let backends = 0;
  let servers = 0;
  while (backends + servers < BACKEND_KILLS + SERVER_KILLS) {
    await progress(writers);
    // In a fixed mixture, of which the last of either kind are left over for the end.
    const wholeServer = servers * BACKEND_KILLS <= backends * SERVER_KILLS;
    if (wholeServer) {
      await database.killAll();
      await database.startAgain();
      servers += 1;
    } else if (database.killBackend()) backends += 1;
  }
}

async function progress(writers: StubbornWriters): Promise<void> {
  const enough = writers.acknowledged.length + PROGRESS;
  await waitUntil(() => writers.acknowledged.length >= enough, PROGRESS_LIMIT_MS);
  if (writers.acknowledged.length < enough) {
    const sessions = await database.query(
      `select state, wait_event_type, wait_event, left(query, 80) as query, now() - xact_start as since
       from pg_stat_activity where usename = 'loamledger_app'`,
    );
    throw new Error(
      `Nothing was written for a minute after a kill. The last answer: ${writers.last()}. ` +
        `In the database: ${JSON.stringify(sessions)}`,
    );
  }
  await sleep(Math.random() * JITTER_MS);
}

async function storedIds(ids: readonly string[]): Promise<number> {
  const [row] = await database.query<{ count: number }>(
    `select count(*)::int from
       (select id from run union all select id from track union all select id from setup) as stored
     where id = any ($1::uuid[])`,
    [ids],
  );
  return row?.count ?? 0;
}

async function countOfAll() {
  const [row] = await database.query<Record<'readings' | 'setups' | 'answers', number>>(
    `select (select count(*)::int from ring_reading) as readings,
            (select count(*)::int from setup) as setups,
            (select count(*)::int from idempotency) as answers`,
  );
  if (!row) throw new Error('Nothing was counted.');
  return row;
}

/** How many records the audit trail does not name exactly once as added. */
async function auditedOtherThanOnce(): Promise<number> {
  const kinds = ['run', 'track', 'session', 'setup', 'decision'];
  const records = kinds.map((kind) => `select '${kind}' as kind, id from ${kind}`).join(' union all ');
  const [row] = await database.query<{ count: number }>(
    `select count(*)::int from (
       select from (${records}) as record
       left join audit_entry on action = 'added' and audit_entry.kind = record.kind and record_id = record.id
       group by record.kind, record.id having count(audit_entry.id) <> 1
     ) as other`,
  );
  return row?.count ?? -1;
}
