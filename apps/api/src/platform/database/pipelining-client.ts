import pg from 'pg';
import { RepeatedStatements } from './repeated-statements.js';

/** The part of a connection that is its socket, whatever kind it is. */
interface Wired {
  readonly connection: { readonly stream: { cork(): void; uncork(): void } };
}

/**
 * Whether the server refused what it had kept: a migration has changed what a statement answers with (its own code is
 * that of anything not supported, and only kept plans are, of what the service asks), or it knows nothing of the name.
 */
const isKeptInVain = (error: unknown): boolean =>
  ['0A000', '26000'].includes(String((error as { code?: unknown } | null)?.code));

/**
 * A connection to Postgres as a service with many short questions needs it:
 * it does not wait for the answer to one statement before it sends the next (the server answers in order), what is
 * asked for in one turn of the event loop leaves in one write, and a statement that comes again is kept parsed and
 * planned by the server. Waiting, writing and planning are most of what a short read costs.
 *
 * Each statement still stands for itself: an error of one in a transaction makes the server refuse the others.
 */
export class PipeliningClient extends pg.Client {
  private readonly repeated = new RepeatedStatements();
  private isCollecting = false;

  constructor(config?: string | pg.ClientConfig) {
    super({ ...(typeof config === 'string' ? { connectionString: config } : config), pipeline: true });
  }

  /** In place of all the forms that it has: what it returns depends on which one is used, and is passed on. */
  override query(statement: unknown, values?: unknown, ...more: unknown[]): never {
    this.collect();
    const send = super.query.bind(this) as (...given: unknown[]) => unknown;
    if (typeof statement !== 'string' || !Array.isArray(values) || values.length === 0)
      return send(statement, values, ...more) as never;
    const answer = send({ text: statement, name: this.repeated.nameOf(statement) }, values, ...more);
    if (answer instanceof Promise)
      answer.catch((error: unknown) => {
        if (isKeptInVain(error)) this.repeated.forget(statement);
      });
    return answer as never;
  }

  /** Holds back what is written until everything that is ready to ask has asked. */
  private collect(): void {
    if (this.isCollecting) return;
    this.isCollecting = true;
    const { stream } = (this as unknown as Wired).connection;
    stream.cork();
    process.nextTick(() => {
      this.isCollecting = false;
      stream.uncork();
    });
  }
}
