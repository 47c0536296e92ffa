import { parentPort } from 'node:worker_threads';
import { fitDemand, type DemandReading } from '@loamledger/evidence';

/** Runs in a worker thread: a fit must not keep the service from answering. */
parentPort?.on('message', ({ id, readings }: { id: number; readings: DemandReading[] }) => {
  try {
    parentPort?.postMessage({ id, fit: fitDemand(readings) });
  } catch (error) {
    parentPort?.postMessage({ id, error: error instanceof Error ? error.message : String(error) });
  }
});
