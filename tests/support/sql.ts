import { randomBytes } from 'node:crypto';
import { Client, DatabaseError } from 'pg';
import { readConfig } from '../../apps/api/src/config/config.js';

/** The database that every Postgres server has and nobody's data is in. */
const MAINTENANCE = 'postgres';

/** Runs one statement as the user of `url` in the database of `url`. */
async function execute(url: string, statement: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

/** Creates a database on the server of `serverUrl`, a copy of `template` if one is named, and returns its address. */
export async function createDatabase(serverUrl: string, purpose: string, template?: string): Promise<string> {
  const name = `loamledger_${purpose}_${randomBytes(8).toString('hex')}`;
  // A database that is being copied may have no sessions, so we stay out of it.
  await execute(
    withDatabase(serverUrl, MAINTENANCE),
    `create database ${name}${template ? ` template ${template}` : ''}`,
  );
  return withDatabase(serverUrl, name);
}

/** SQLSTATE of a statement that the user may not run. */
const INSUFFICIENT_PRIVILEGE = '42501';

/** Drops the database of `url`, ending the sessions that are still in it. */
export async function dropDatabase(url: string): Promise<void> {
  const drop = `drop database if exists ${nameOf(url)}`;
  try {
    await execute(withDatabase(url, MAINTENANCE), `${drop} with (force)`);
  } catch (error) {
    if (!(error instanceof DatabaseError) || error.code !== INSUFFICIENT_PRIVILEGE) throw error;
    // The server's own vacuum is at work in there, which belongs to no user whose sessions we may end. A drop
    // without force ends it by itself.
    await execute(withDatabase(url, MAINTENANCE), drop);
  }
}

/** The name of the database of `url`. */
export function nameOf(url: string): string {
  return new URL(url).pathname.slice(1);
}

/** The address of the role that serves requests, as the service itself derives it. */
export function appUrlOf(ownerUrl: string): string {
  return readConfig({ DATABASE_URL: ownerUrl }).appDatabaseUrl;
}

function withDatabase(url: string, name: string): string {
  const other = new URL(url);
  other.pathname = `/${name}`;
  return other.toString();
}
