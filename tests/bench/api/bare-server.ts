/**
 * The reference of the benchmark: Fastify and pg alone, sending for each path the statements that its parent names,
 * and answering with their rows. What a service costs beyond its statements is the difference to this.
 */
import { once } from 'node:events';
import Fastify from 'fastify';
import pg from 'pg';
import type { Recorded } from './statements.js';

export interface BareServerTask {
  readonly databaseUrl: string;
  readonly poolSize: number;
  readonly host: string;
  readonly port: number;
  readonly reads: readonly Recorded[];
  /** Whether Postgres keeps each statement parsed and planned, as it does for the service. */
  readonly prepares: boolean;
}

const [task] = (await once(process, 'message')) as [BareServerTask];
const pool = new pg.Pool({ connectionString: task.databaseUrl, max: task.poolSize });
const texts = [...new Set(task.reads.flatMap(({ statements }) => statements.map(({ text }) => text)))];
/** Only what has values can be kept. */
const nameOf = (text: string, values: readonly unknown[]) =>
  task.prepares && values.length > 0 ? { name: `s${texts.indexOf(text)}` } : {};
const statementsOf = new Map(
  task.reads.map(({ path, statements }) => [
    path,
    statements.map(({ text, values }) => ({ text, values: [...values], ...nameOf(text, values) })),
  ]),
);
const server = Fastify();
server.get('/*', async (request, reply) => {
  const statements = statementsOf.get(request.url);
  if (!statements) return reply.code(404).send();
  const client = await pool.connect();
  try {
    const answers: unknown[] = [];
    for (const statement of statements) {
      const { rows } = await client.query(statement);
      if (rows.length > 0) answers.push(rows);
    }
    return answers;
  } finally {
    client.release();
  }
});
await server.listen({ host: task.host, port: task.port });
process.send?.('ready');
process.on('disconnect', () => process.exit());
