import { parentPort } from 'node:worker_threads';
import { doJob, type Job } from './jobs.js';

parentPort?.on('message', (job: Job) => parentPort?.postMessage(doJob(job)));
