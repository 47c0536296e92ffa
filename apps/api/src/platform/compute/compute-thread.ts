import { Worker } from 'node:worker_threads';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { Refusal } from '../errors/refusal.js';
import { requestOrigin } from '../http/request-origin.js';
import { Gauges } from '../operations/gauges.js';
import { FairQueue } from './fair-queue.js';

/** Computations of one account that may wait at a time: far more than the pages of one person ask for. */
const MOST_WAITING = 20;
/** Whose turn it is where nobody asked: the service's own. */
const NOBODY = '';

/** A module that exports the function to run, and the name of the function: known to the thread by its address. */
export interface Computation<Input, Output> {
  readonly module: URL;
  readonly name: string;
  /** Never set: it carries the types of input and output. */
  readonly types?: (input: Input) => Output;
}

interface Task {
  readonly module: string;
  readonly name: string;
  readonly input: unknown;
  readonly resolve: (output: never) => void;
  readonly reject: (error: Error) => void;
}
type Answer = { output: never } | { error: string };

/**
 * What is young in the thread has half the room that it would be given: it computes as fast, and the service holds less
 * memory. What answers needs the whole, or a long list costs it a twentieth more.
 */
const MOST_YOUNG_MIB = 24;

class ThreadEnded extends Error {
  constructor() {
    super('The computing thread ended.');
  }
}

class TooMuchToCompute extends Refusal {
  override readonly retryAfterSeconds = 1;

  constructor() {
    super(
      'computing.too-much',
      'too-many-requests',
      `At most ${MOST_WAITING} computations of one account wait for their turn.`,
    );
  }
}

/**
 * Runs long computations in a thread of its own, one after another, so that the service keeps answering; each account
 * that asks in its turn, so that nobody waits for all that another has asked. Inputs and outputs are copied: they must be
 * plain data.
 */
@Injectable()
export class ComputeThread implements OnApplicationShutdown {
  private worker: Worker | undefined;
  private running: Task | undefined;
  private readonly waiting = new FairQueue<Task>();

  constructor(gauges: Gauges) {
    gauges.add({
      name: 'loamledger_computations_waiting',
      help: 'Long computations that run or wait for their turn.',
      read: () => this.waiting.size + Number(this.running !== undefined),
    });
  }

  /** @throws TooMuchToCompute where enough of the account's that asks waits already. */
  run<Input, Output>(computation: Computation<Input, Output>, input: Input): Promise<Output> {
    const whose = requestOrigin()?.accountId ?? NOBODY;
    if (whose !== NOBODY && this.waiting.waitingOf(whose) >= MOST_WAITING)
      return Promise.reject(new TooMuchToCompute());
    const { module, name } = computation;
    return new Promise((resolve, reject) => {
      this.waiting.add(whose, { module: module.href, name, input, resolve, reject });
      this.goOn();
    });
  }

  async onApplicationShutdown(): Promise<void> {
    for (let task = this.waiting.next(); task; task = this.waiting.next()) task.reject(new ThreadEnded());
    await this.worker?.terminate();
  }

  /** Begins with what is next, unless something runs. */
  private goOn(): void {
    if (this.running) return;
    this.running = this.waiting.next();
    if (!this.running) return;
    const { module, name, input } = this.running;
    try {
      this.thread().postMessage({ module, name, input });
    } catch (error) {
      // What cannot be copied to the thread.
      this.answered({ error: String(error) });
    }
  }

  private thread(): Worker {
    if (this.worker) return this.worker;
    const worker = new Worker(new URL('./compute.worker.js', import.meta.url), {
      resourceLimits: { maxYoungGenerationSizeMb: MOST_YOUNG_MIB },
    });
    // An idle thread must not keep the process alive.
    worker.unref();
    worker.on('message', (answer: Answer) => this.answered(answer));
    worker.on('error', (error) => this.ended(worker, error as Error));
    worker.on('exit', () => this.ended(worker, new ThreadEnded()));
    this.worker = worker;
    return worker;
  }

  private answered(answer: Answer): void {
    const done = this.running;
    this.running = undefined;
    if ('error' in answer) done?.reject(new Error(answer.error));
    else done?.resolve(answer.output);
    this.goOn();
  }

  /** Tells who waited for what ran; what waits for its turn goes on in a new thread. */
  private ended(worker: Worker, error: Error): void {
    // Of its two farewells the first counts.
    if (this.worker !== worker) return;
    this.worker = undefined;
    this.running?.reject(error);
    this.running = undefined;
    this.goOn();
  }
}
