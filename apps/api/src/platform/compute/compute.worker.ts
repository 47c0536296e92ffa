import { parentPort } from 'node:worker_threads';

interface Task {
  id: number;
  module: string;
  name: string;
  input: unknown;
}

parentPort?.on('message', async ({ id, module, name, input }: Task) => {
  try {
    const functions = (await import(module)) as Record<string, (input: unknown) => unknown>;
    const run = functions[name];
    if (!run) throw new Error(`${module} exports no ${name}.`);
    parentPort?.postMessage({ id, output: run(input) });
  } catch (error) {
    parentPort?.postMessage({
      id,
      error: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
});
