import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type House, type StartOptions, clone, isReady, makeHouse } from './house.js';

/** All that a start needs of an installed and built clone. */
const NEEDED = [
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'node_modules',
  'libs',
  'apps',
  '.cache',
];
/** An account that every system has and that owns nothing of ours. */
const STRANGER = 'nobody';

/** Without a data folder named, as in a plain `npm start`. */
const ordinary = { LOAMLEDGER_DATA_DIR: '' };

describe.runIf(process.getuid?.() === 0)('a clone of its own', () => {
  let home: string;
  let folder: string;
  let house: House;

  beforeAll(async () => {
    house = await makeHouse();
    home = await mkdtemp(join(tmpdir(), 'loamledger-home-'));
    folder = join(home, 'clone');
    await mkdir(folder);
    const paths = NEEDED.map((name) => join(clone, name));
    execFileSync('cp', ['-a', ...paths, folder]);
  });
  afterAll(async () => {
    await house.clear();
    await rm(home, { recursive: true, force: true });
  });

  async function startAndStop(options: StartOptions) {
    const start = house.start({ folder, env: ordinary, ...options });
    expect(await isReady(await start.address())).toBe(true);
    start.process.kill('SIGTERM');
    expect(await start.ended).toBe(0);
    expect(await house.remaining()).toEqual([]);
  }

  it('runs as root in a home that only root can enter, its database under another account', async () => {
    await chmod(home, 0o700);
    await startAndStop({});
    const instance = readFileSync(join(folder, '.data/instance'), 'utf8').trim();
    const data = join('/var/lib/loamledger', instance);
    try {
      expect((await stat(join(data, 'postgres-15'))).uid).not.toBe(0);
      expect((await stat(join(data, 'postgres.password'))).mode & 0o777).toBe(0o600);
      await startAndStop({});
    } finally {
      await rm(data, { recursive: true });
    }
  });

  it('runs as a normal user with everything inside the clone', async () => {
    await chmod(home, 0o755);
    await rm(join(folder, '.data'), { recursive: true });
    execFileSync('chown', ['-R', STRANGER, folder]);
    const { uid, gid } = await stat(folder);
    expect(uid).not.toBe(0);
    const account = { uid, gid };
    await startAndStop({ account });
    expect(existsSync(join(folder, '.data/postgres-15'))).toBe(true);
    await startAndStop({ account });
  });
});
