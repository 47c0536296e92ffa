import { once } from 'node:events';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FileRoom } from '../../apps/api/src/platform/http/file-room.js';
import { beginUpload, QUIET_MS } from './support/begun-upload.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, type TestTeam } from './support/team.js';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
});
afterAll(() => service.stop());

const KIBIBYTE = 1_024;
const MEBIBYTE = KIBIBYTE * KIBIBYTE;
const FILES = () =>
  [
    ['/teams/import', 'application/vnd.loamledger.team+json'],
    [`${team.path}/runs/import/preview`, 'text/csv'],
    [
      `${team.path}/runs/import-recording/preview?trackId=${team.track.id}&bikeId=${team.bike.id}`,
      'application/gpx+xml',
    ],
  ] as const;

/** The status of a request that announces so many KiB and sends one; null where there is none as long as `patienceMs`. */
async function statusBeforeAll(
  path: string,
  headers: Record<string, string>,
  kibibytes: number | 'untold',
  patienceMs?: number,
): Promise<number | null> {
  const begun = await beginUpload(`${service.url}${path}`, headers, kibibytes, patienceMs);
  begun.close();
  return begun.answer?.status ?? null;
}

describe('a file', () => {
  it('of a stranger is refused before it is read, told how long it is or not', async () => {
    for (const [path, type] of FILES()) {
      const stranger = { 'content-type': type };
      const forged = { ...stranger, cookie: 'loamledger_sign_in=x', authorization: 'Bearer lml_x' };
      for (const headers of [stranger, forged])
        for (const size of [3 * KIBIBYTE, 'untold'] as const)
          expect([path, size, await statusBeforeAll(path, headers, size)]).toEqual([path, size, 401]);
    }
  });

  it.each([
    ['told beforehand', `content-length: ${3 * MEBIBYTE}`, (part: string) => part, ''],
    ['not told', 'transfer-encoding: chunked', (part: string) => `100000\r\n${part}\r\n`, '0\r\n\r\n'],
  ])(
    'of more bytes than any message, %s, is refused before it is read, and may be sent to its end',
    async (_, length, written, end) => {
      const { hostname, port } = new URL(service.url);
      const connection = connect(Number(port), hostname).setEncoding('utf8');
      let heard = '';
      connection.on('data', (text) => (heard += String(text)));
      const broken = once(connection, 'close');
      const part = written(' '.repeat(MEBIBYTE));
      const head = `POST /api/v1/sign-ins HTTP/1.1\r\nhost: ${hostname}\r\ncontent-type: application/json\r\n${length}`;
      connection.write(`${head}\r\n\r\n${part}`);
      await expect.poll(() => heard).toContain('HTTP/1.1 413');
      connection.write(part + part + end);
      // A connection that was closed amid it would break, and with it the answer of who reads it only then.
      connection.write(`GET /api/v1/health/live HTTP/1.1\r\nhost: ${hostname}\r\n\r\n`);
      await expect.poll(() => heard).toContain('HTTP/1.1 200');
      connection.destroy();
      await broken;
    },
  );

  it('of a type that nothing takes is refused before it is read too', async () => {
    const headers = { 'content-type': 'application/octet-stream' };
    expect(await statusBeforeAll('/sign-ins', headers, 3 * KIBIBYTE)).toBe(401);
  });

  it('of a member, or of their script, is waited for', async () => {
    const { token } = (
      await team.mechanic.post(`${team.path}/tokens`, { name: 'Script', scopes: ['log-runs'] }).expect(201)
    ).body as { token: string };
    for (const [path, type] of FILES()) {
      const member = { 'content-type': type, cookie: team.mechanic.cookieHeader };
      expect(await statusBeforeAll(path, member, 3 * KIBIBYTE, QUIET_MS)).toBeNull();
      // Whoever hangs up gives the room for the file back, as soon as the service has noticed.
      await expect.poll(() => service.app.get(FileRoom).taken).toBe(0);
      const byScript = { 'content-type': type, authorization: `Bearer ${token}` };
      expect(await statusBeforeAll(path, byScript, 3 * KIBIBYTE, QUIET_MS)).toBeNull();
      await expect.poll(() => service.app.get(FileRoom).taken).toBe(0);
    }
  });

  it('leaves messages of strangers as they are, in pieces or not', async () => {
    const answer = await fetch(`${service.url}/sign-ins`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: new Blob([
        JSON.stringify({ email: team.mechanic.email, password: 'not this sentence' }),
      ]).stream(),
      duplex: 'half',
    } as RequestInit);
    expect(answer.status).toBe(401);
    expect(await answer.json()).toMatchObject({ code: 'sign-in.wrong-credentials' });
  });
});
