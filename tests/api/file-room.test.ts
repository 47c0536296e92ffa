import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { FileRoom } from '../../apps/api/src/platform/http/file-room.js';
import { RequestTurns } from '../../apps/api/src/platform/http/request-turns.js';
import { beginUpload, QUIET_MS, type BegunUpload } from './support/begun-upload.js';
import { Member } from './support/member.js';
import { holdTable } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, script, type TestTeam } from './support/team.js';

const MEBIBYTE = 1_024;
const ARCHIVE = 'application/vnd.loamledger.team+json';
const TOO_MANY = { status: 429, retryAfter: 5, code: 'files.too-many' };
const NO_ROOM = { status: 503, retryAfter: 5, code: 'files.no-room' };

let service: TestService;
let team: TestTeam;
let others: Member[];
beforeAll(async () => {
  // Room for two archives.
  service = await startService({ FILE_ROOM_MIB: '64' });
  team = await foundTeam(service);
  others = [await new Member(service).signUp(), await new Member(service).signUp()];
});
afterAll(() => service.stop());

const begun: BegunUpload[] = [];
async function begin(
  who: Record<string, string>,
  { path = '/teams/import', type = ARCHIVE, kibibytes = (3 * MEBIBYTE) as number | 'untold' } = {},
  patienceMs?: number,
): Promise<BegunUpload['answer']> {
  const url = `${service.url}${path}`;
  const upload = await beginUpload(url, { ...who, 'content-type': type }, kibibytes, patienceMs);
  begun.push(upload);
  return upload.answer;
}
/** The same for one that may go on: null. */
const beginToSend = (who: Record<string, string>, what: Parameters<typeof begin>[1] = {}) =>
  begin(who, what, QUIET_MS);
const cookieOf = (member: Member) => ({ cookie: member.cookieHeader });
const allHangUp = async () => {
  for (const upload of begun.splice(0)) upload.close();
  await expect.poll(() => service.app.get(FileRoom).taken).toBe(0);
};
afterEach(allHangUp);

describe('archives that come in', () => {
  it('do so one at a time for one account, whichever way it asks; the next is refused unread', async () => {
    const mechanic = cookieOf(team.mechanic);
    expect(await beginToSend(mechanic)).toBeNull();
    for (const kibibytes of [3 * MEBIBYTE, 31 * MEBIBYTE, 1, 'untold'] as const)
      expect(await begin(mechanic, { kibibytes })).toEqual(TOO_MANY);
    for (const path of [`${team.path}/runs`, '/sign-ins', '/nowhere'])
      expect(await begin(mechanic, { path })).toEqual(TOO_MANY);
    expect(await begin(mechanic, { type: `${ARCHIVE.toUpperCase()}; charset=utf-8` })).toEqual(TOO_MANY);
    const token = await script(service, team, ['log-runs']);
    expect(await begin({ authorization: token.authorization })).toEqual(TOO_MANY);
  });

  it('find room for few at a time, of whomever; the next is told to wait, unread', async () => {
    const [first, second] = others as [Member, Member];
    expect(await beginToSend(cookieOf(team.mechanic))).toBeNull();
    expect(await beginToSend(cookieOf(first))).toBeNull();
    expect(await begin(cookieOf(second))).toEqual(NO_ROOM);
    await allHangUp();
    expect(await beginToSend(cookieOf(second))).toBeNull();
  });

  it('give their room back when they were taken, refused, or broken off', async () => {
    const { body: archive } = await team.mechanic.get(`${team.path}/archive`).expect(200);
    for (let times = 0; times < 3; times += 1) {
      await team.mechanic.postArchive('{}').expect(400);
      await team.mechanic.postArchive(archive as object).expect(201);
      expect(await beginToSend(cookieOf(team.mechanic))).toBeNull();
      await allHangUp();
    }
  });
});

describe('tables and recordings', () => {
  it('may come in several at a time, as many as are one large file', async () => {
    const path = `${team.path}/runs/import/preview`;
    const table = { path, type: 'text/csv', kibibytes: 4 * MEBIBYTE };
    for (let count = 0; count < 8; count += 1)
      expect(await beginToSend(cookieOf(team.mechanic), table)).toBeNull();
    expect(await begin(cookieOf(team.mechanic), table)).toEqual(TOO_MANY);
    expect(await beginToSend(cookieOf(team.coach), table)).toBeNull();
    // Short ones are as cheap as messages.
    await team.mechanic.postCsv(path, 'date,track,bike\n').expect(200);
  });
});

describe('an archive that leaves', () => {
  let held: Awaited<ReturnType<typeof holdTable>>;
  beforeEach(async () => {
    held = await holdTable(service, 'track');
  });
  afterEach(() => held.release());

  it('does so one at a time for one account, and takes the room until its reader has it', async () => {
    const first = team.mechanic.get(`${team.path}/archive`).then((answer) => answer);
    await expect.poll(() => service.app.get(FileRoom).taken).toBeGreaterThan(0);
    const { body, headers } = await team.mechanic.get(`${team.path}/archive`).expect(429);
    expect(body).toMatchObject({ code: 'files.too-many', status: 429 });
    expect(headers['retry-after']).toBe('5');
    expect(await begin(cookieOf(team.mechanic))).toEqual(TOO_MANY);
    await held.release();
    expect((await first).status).toBe(200);
    await team.mechanic.get(`${team.path}/archive`).expect(200);
  });

  it('keeps its room when its reader hangs up, until nothing is done for it any more', async () => {
    const gone = new AbortController();
    const asked = fetch(`${service.url}${team.path}/archive`, {
      headers: cookieOf(team.mechanic),
      signal: gone.signal,
    }).catch(() => undefined);
    await expect.poll(() => service.app.get(FileRoom).taken).toBeGreaterThan(0);
    gone.abort();
    await asked;
    await new Promise((resolve) => setTimeout(resolve, 200));
    await team.mechanic.get(`${team.path}/archive`).expect(429);
    await held.release();
    await expect.poll(() => service.app.get(FileRoom).taken).toBe(0);
    await team.mechanic.get(`${team.path}/archive`).expect(200);
  });
});

it('of requests and files nothing is counted for ever', async () => {
  await expect.poll(() => service.app.get(RequestTurns).atWork).toBe(0);
  expect(service.app.get(FileRoom).taken).toBe(0);
});
