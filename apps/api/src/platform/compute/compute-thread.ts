import { Worker } from 'node:worker_threads';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { Gauges } from '../operations/gauges.js';

/** A module that exports the function to run, and the name of the function: known to the thread by its address. */
export interface Computation<Input, Output> {
  readonly module: URL;
  readonly name: string;
  /** Never set: it carries the types of input and output. */
  readonly types?: (input: Input) => Output;
}

interface Waiting {
  resolve: (output: never) => void;
  reject: (error: Error) => void;
}
type Answer = { id: number; output: never } | { id: number; error: string };

/**
 * Runs long computations in a thread of its own, one after another, so that the service keeps answering. Inputs
 * and outputs are copied: they must be plain data.
 */
@Injectable()
export class ComputeThread implements OnApplicationShutdown {
  private worker: Worker | undefined;
  private lastId = 0;
  private readonly waiting = new Map<number, Waiting>();

  constructor(gauges: Gauges) {
    gauges.add({
      name: 'loamledger_computations_waiting',
      help: 'Long computations that run or wait for their turn.',
      read: () => this.waiting.size,
    });
  }

  run<Input, Output>(computation: Computation<Input, Output>, input: Input): Promise<Output> {
    const id = (this.lastId += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      this.thread().postMessage({ id, module: computation.module.href, name: computation.name, input });
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.worker?.terminate();
  }

  private thread(): Worker {
    if (this.worker) return this.worker;
    const worker = new Worker(new URL('./compute.worker.js', import.meta.url));
    // An idle thread must not keep the process alive.
    worker.unref();
    worker.on('message', (answer: Answer) => {
      const waiting = this.waiting.get(answer.id);
      this.waiting.delete(answer.id);
      if ('error' in answer) waiting?.reject(new Error(answer.error));
      else waiting?.resolve(answer.output);
    });
    worker.on('error', (error) => this.fail(error as Error));
    worker.on('exit', () => this.fail(new Error('The computing thread ended.')));
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
