import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Job, JobResult } from './jobs.js';

/** Does all jobs on every core; results in the order of the jobs, whichever thread did them. */
export async function inThreads(jobs: readonly Job[]): Promise<JobResult[]> {
  const results = new Array<JobResult>(jobs.length);
  let nextJob = 0;
  const work = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const worker = new Worker(new URL('./thread.js', import.meta.url));
      let current = 0;
      const giveNext = (): void => {
        current = nextJob;
        nextJob += 1;
        if (current < jobs.length) worker.postMessage(jobs[current]);
        else void worker.terminate().then(() => resolve());
      };
      worker.on('message', (result: JobResult) => {
        results[current] = result;
        giveNext();
      });
      worker.on('error', reject);
      giveNext();
    });
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return results;
}
