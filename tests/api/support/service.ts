import { readConfig } from '../../../apps/api/src/config/config.js';
import { createApp } from '../../../apps/api/src/create-app.js';
import { ComputeThread, type Computation } from '../../../apps/api/src/platform/compute/compute-thread.js';
import { createTestDatabase, type TestDatabase } from '../../support/database.js';

type App = Awaited<ReturnType<typeof createApp>>;

export interface TestService {
  /** Address of the API, without a slash at the end. */
  readonly url: string;
  readonly database: TestDatabase;
  readonly app: App;
  stop(): Promise<void>;
}

/** The service, listening on a free port over a database of its own, or as a second process would on a given one. */
export async function startService(
  environment: Record<string, string> = {},
  given?: TestDatabase,
): Promise<TestService> {
  const database = given ?? (await createTestDatabase());
  const config = readConfig({
    DATABASE_URL: database.ownerUrl,
    LOG_LEVEL: 'error',
    DATABASE_POOL_SIZE: '5',
    ...environment,
  });
  const app = await createApp(config);
  computeHere(app.get(ComputeThread));
  await app.listen(0, '127.0.0.1');
  return {
    url: `${await app.getUrl()}/api/v1`,
    database,
    app,
    stop: async () => {
      await app.close();
      if (!given) await database.drop();
    },
  };
}

/** A thread of Node cannot load the sources as they are: tests compute the same in the thread they run in. */
export function computeHere(thread: Pick<ComputeThread, 'run'>): void {
  thread.run = async <Input, Output>(computation: Computation<Input, Output>, input: Input) => {
    const functions = (await import(computation.module.href)) as Record<string, (given: Input) => Output>;
    const compute = functions[computation.name];
    if (!compute) throw new Error(`${computation.module.href} exports no ${computation.name}.`);
    return compute(structuredClone(input));
  };
}
