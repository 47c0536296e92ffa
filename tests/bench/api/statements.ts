import pg from 'pg';
import { root } from '../../../apps/api/scripts/places.mjs';
import { join } from 'node:path';

/** One statement as it was sent to Postgres. */
interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** What a read asks the database, in order, transaction and tenancy included. */
export interface Recorded {
  readonly path: string;
  readonly statements: readonly Statement[];
}

interface App {
  inject(call: object): Promise<{ statusCode: number; body: string }>;
  close(): Promise<void>;
}
interface Built {
  createApp(config: unknown): Promise<App & { init(): Promise<unknown> }>;
  readConfig(environment: NodeJS.ProcessEnv): unknown;
}

/**
 * Answers each read once by the service itself, in this process, and notes every statement that it sends.
 * @throws Error when a read is refused.
 */
export async function recordStatements(
  settings: NodeJS.ProcessEnv,
  cookie: string,
  paths: readonly string[],
): Promise<Recorded[]> {
  const noted = noteStatements();
  const app = await openApp(settings);
  try {
    const recorded: Recorded[] = [];
    for (const path of paths) {
      // The first answer may compute and store what the later ones only read.
      await answer(app, path, cookie);
      noted.length = 0;
      await answer(app, path, cookie);
      recorded.push({ path, statements: [...noted] });
    }
    return recorded;
  } finally {
    await app.close();
  }
}

async function openApp(settings: NodeJS.ProcessEnv): Promise<App> {
  const built = (file: string) => import(join(root, 'apps/api/dist', file)) as Promise<Built>;
  const { createApp } = await built('create-app.js');
  const { readConfig } = await built('config/config.js');
  const app = await createApp(readConfig(settings));
  await app.init();
  return app;
}

async function answer(app: App, path: string, cookie: string): Promise<void> {
  const { statusCode, body } = await app.inject({ method: 'GET', url: path, headers: { cookie } });
  if (statusCode !== 200) throw new Error(`GET ${path} answered ${statusCode}: ${body}`);
}

/** From now on notes what any connection of this process sends. */
function noteStatements(): Statement[] {
  const noted: Statement[] = [];
  const prototype = pg.Client.prototype as unknown as { query: (...given: unknown[]) => unknown };
  const send = prototype.query;
  prototype.query = function (this: unknown, ...given: unknown[]): unknown {
    const [first, values] = given;
    const { text, values: own } = typeof first === 'string' ? { text: first } : (first as Partial<Statement>);
    if (text !== undefined) noted.push({ text, values: Array.isArray(values) ? values : (own ?? []) });
    return send.apply(this, given);
  };
  return noted;
}
