import { Worker } from 'node:worker_threads';
import type { DemandFit, DemandReading } from '@loamledger/evidence';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';

type Answer = { id: number; fit: DemandFit } | { id: number; error: string };
interface Waiting {
  resolve: (fit: DemandFit) => void;
  reject: (error: Error) => void;
}

/** Fits the demand model in one worker thread of its own, started when first needed. */
@Injectable()
export class FitThread implements OnApplicationShutdown {
  private worker: Worker | undefined;
  private lastId = 0;
  private readonly waiting = new Map<number, Waiting>();

  fit(readings: readonly DemandReading[]): Promise<DemandFit> {
    const id = (this.lastId += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      this.thread().postMessage({ id, readings });
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.worker?.terminate();
  }

  private thread(): Worker {
    if (this.worker) return this.worker;
    const worker = new Worker(new URL('./fit.worker.js', import.meta.url));
    // An idle thread must not keep the process alive.
    worker.unref();
    worker.on('message', (answer: Answer) => {
      const waiting = this.waiting.get(answer.id);
      this.waiting.delete(answer.id);
      if ('fit' in answer) waiting?.resolve(answer.fit);
      else waiting?.reject(new Error(answer.error));
    });
    worker.on('error', (error) => this.fail(error as Error));
    worker.on('exit', () => this.fail(new Error('The thread of the demand model ended.')));
    this.worker = worker;
    return worker;
  }

  /** Tells everybody who waits, and lets the next request start a new thread. */
  private fail(error: Error): void {
    this.worker = undefined;
    for (const { reject } of this.waiting.values()) reject(error);
    this.waiting.clear();
  }
}
