import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { Client } from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { anyFreePort } from '../../apps/api/scripts/process/ports.mjs';
import { containers, image } from './compose.js';
import { clone, isReady, kill, waitUntil } from './house.js';

const HOST = '127.0.0.1';
const LIMIT_MS = 60_000;
const SERVICE_PASSWORD = 'b'.repeat(48);
const runCommand = promisify(execFile);

describe('docker-compose.yml', () => {
  const OWNER_PASSWORD = 'a'.repeat(48);
  const { database, migrate, service, ...others } = containers({
    LOAMLEDGER_DATABASE_PASSWORD: OWNER_PASSWORD,
    LOAMLEDGER_SERVICE_PASSWORD: SERVICE_PASSWORD,
  });

  it('does not start without its secrets', () => {
    expect(() => containers({ LOAMLEDGER_SERVICE_PASSWORD: SERVICE_PASSWORD })).toThrow('set it in .env');
    expect(() => containers({ LOAMLEDGER_DATABASE_PASSWORD: OWNER_PASSWORD })).toThrow('set it in .env');
  });

  it('tells the password of the owner to the database and to what migrates, and to nothing that serves', () => {
    for (const container of [database, migrate]) expect(JSON.stringify(container)).toContain(OWNER_PASSWORD);
    for (const container of [service, ...Object.values(others)]) {
      expect(JSON.stringify(container)).not.toContain(OWNER_PASSWORD);
    }
    expect(service?.environment['DATABASE_APP_URL']).toContain(SERVICE_PASSWORD);
  });

  it('migrates once the database is there, and serves once that has succeeded', () => {
    expect(migrate?.depends_on).toEqual({ database: { condition: 'service_healthy' } });
    expect(service?.depends_on).toEqual({ migrate: { condition: 'service_completed_successfully' } });
    expect(migrate?.image).toBe(service?.image);
  });

  it('gives no container root, a capability, or a file system of ours to write on', () => {
    expect(image().user).toBe('node');
    expect(database?.user).toBe('postgres');
    for (const container of [database, migrate, service, ...Object.values(others)]) {
      expect(container?.cap_drop).toEqual(['ALL']);
      expect(container?.security_opt).toEqual(['no-new-privileges:true']);
    }
    for (const container of [migrate, service]) expect(container?.read_only).toBe(true);
  });

  it('names images of others by their full version', () => {
    const bases = image().bases;
    expect(new Set(bases).size).toBe(1);
    for (const base of bases) expect(base).toMatch(/^node:\d+\.\d+\.\d+-[\w-]+$/);
    expect(database?.image).toMatch(/^postgres:\d+\.\d+-[\w-]+$/);
  });

  it('shows the service to its own machine only, and the database to nobody', () => {
    expect(service?.ports).toEqual(['127.0.0.1:4750:4750']);
    for (const container of [database, migrate]) expect(container?.ports).toBeUndefined();
  });
});

describe('what the containers run', () => {
  let server: Awaited<ReturnType<typeof startThrowaway>>;
  let started: ChildProcess | undefined;
  beforeAll(async () => {
    server = await startThrowaway();
  });
  afterEach(async () => {
    if (started?.pid !== undefined && started.exitCode === null) {
      kill(started.pid);
      await once(started, 'exit');
    }
    started = undefined;
  });
  afterAll(() => server.stop());

  /** The environment and the command of a container, with our Postgres in the place of its own. */
  function inOurPlaces(name: 'migrate' | 'service') {
    const { password, host } = new URL(server.url);
    const settings = {
      LOAMLEDGER_DATABASE_PASSWORD: password,
      LOAMLEDGER_SERVICE_PASSWORD: SERVICE_PASSWORD,
    };
    const container = containers(settings)[name];
    if (!container) throw new Error(`docker-compose.yml describes no ${name}.`);
    const of = image();
    const given = { ...of.environment, ...container.environment };
    const environment = Object.fromEntries(
      Object.entries(given).map(([key, value]) => [
        key,
        value.replace('@database:5432/', `@${host}/`).replace(/^\/loamledger\//, clone),
      ]),
    );
    const [command = '', ...parameters] = container.command ?? of.command;
    return {
      environment: { PATH: process.env['PATH'], ...environment, HOST } as Record<string, string>,
      command,
      parameters,
    };
  }

  async function migrate(): Promise<string> {
    const { environment, command, parameters } = inOurPlaces('migrate');
    return (await runCommand(command, parameters, { cwd: clone, env: environment })).stdout;
  }

  /** The service, or what it said before it ended by itself. */
  async function serve(more: Record<string, string> = {}) {
    const { environment, command, parameters } = inOurPlaces('service');
    const port = await anyFreePort(HOST);
    const child = spawn(command, parameters, {
      cwd: clone,
      env: { ...environment, PORT: String(port), ...more },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    started = child;
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += String(text)));
    const address = `http://${HOST}:${port}`;
    await waitUntil(async () => child.exitCode !== null || (await isReady(address)), LIMIT_MS);
    return { child, address, said: () => said };
  }

  const asOwner = async (statement: string): Promise<void> => {
    const client = new Client({ connectionString: server.url });
    await client.connect();
    await client.query(statement).finally(() => client.end());
  };

  it('migrates, ends, and finds nothing more to do', async () => {
    expect(await migrate()).toMatch(/^migrated: /);
    expect(await migrate()).toBe('schema is up to date\n');
  });

  it('serves dashboard and API without knowing the owner, and stops in order', async () => {
    await migrate();
    const { child, address, said } = await serve();
    expect(await isReady(address), said()).toBe(true);
    expect(await (await fetch(address)).text()).toContain('<html');
    const person = { email: 'person@team.example', password: 'a sentence nobody guesses', displayName: 'P' };
    const answer = await fetch(`${address}/api/v1/accounts`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(person),
    });
    expect(answer.status).toBe(201);
    const told = readFileSync(`/proc/${child.pid}/environ`, 'utf8');
    expect(told).toContain('DATABASE_APP_URL=');
    expect(told).not.toContain(new URL(server.url).password);
    child.kill('SIGTERM');
    expect(await once(child, 'exit')).toEqual([0, null]);
  });

  it('takes a new password of the role that serves when it has changed in .env', async () => {
    await migrate();
    await asOwner(`alter role loamledger_app password 'another'`);
    await migrate();
    expect(await isReady((await serve()).address)).toBe(true);
  });

  it('refuses to serve as a role that row-level security does not bind, in words', async () => {
    await migrate();
    const deputy = new URL(server.url);
    [deputy.username, deputy.password] = ['deputy', 'c'.repeat(48)];
    await asOwner(`create role deputy login password '${deputy.password}' noinherit in role loamledger`);
    for (const url of [server.url, deputy.href]) {
      const { child, said } = await serve({ DATABASE_APP_URL: url });
      expect(child.exitCode).toBe(1);
      expect(said()).toContain(
        `The role ${new URL(url).username} owns tables or may bypass row-level security`,
      );
      expect(said()).not.toContain(new URL(url).password);
    }
  });

  it('says what is missing where nobody told it a database', async () => {
    const { child, said } = await serve({ DATABASE_APP_URL: '' });
    expect(child.exitCode).toBe(1);
    expect(said()).toContain('DATABASE_APP_URL must be a postgres:// address');
    const { environment, command, parameters } = inOurPlaces('migrate');
    const env = { ...environment, DATABASE_URL: '' };
    await expect(runCommand(command, parameters, { cwd: clone, env })).rejects.toThrow(
      'DATABASE_URL must be',
    );
  });
});
