import pg from 'pg';
import { RepeatedStatements } from './repeated-statements.js';

/** The part of a connection that is its socket, whatever kind it is. */
interface Wired {
  readonly connection: { readonly stream: { cork(): void; uncork(): void } };
}

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
    const isNamed = typeof statement === 'string' && Array.isArray(values) && values.length > 0;
    const told = isNamed ? { text: statement, name: this.repeated.nameOf(statement) } : statement;
    const send = super.query.bind(this) as (...given: unknown[]) => unknown;
    return send(told, values, ...more) as never;
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
