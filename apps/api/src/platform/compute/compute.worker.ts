import { parentPort } from 'node:worker_threads';

interface Task {
  module: string;
  name: string;
  input: unknown;
}

parentPort?.on('message', async ({ module, name, input }: Task) => {
  try {
    const functions = (await import(module)) as Record<string, (input: unknown) => unknown>;
    const run = functions[name];
    if (!run) throw new Error(`${module} exports no ${name}.`);
    parentPort?.postMessage({ output: run(input) });
  } catch (error) {
    parentPort?.postMessage({
      error: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
});
