import { deviceRecords } from '../../../shared/device/device-database.js';
import { oneAtATime } from '../../../shared/device/one-at-a-time.js';
import { hearTabs, tellTabs } from '../../../shared/device/tabs.js';
import { inOrder, type QueuedRun } from './queued-run.js';
import type { SendOutcome } from './answer.js';
import { isSignedInAs, sendRun } from './send-run.js';
import { sendQueue, type QueueParts, type SendResult } from './send-queue.js';

const SUBJECT = 'runs';
const FIRST_PAUSE_MS = 2_000;
const LONGEST_PAUSE_MS = 60_000;

export interface QueueState {
  /** What this account has not got an answer for yet, oldest first. */
  readonly runs: readonly QueuedRun[];
  /** True while runs are being sent; else how the last sending ended. */
  readonly sending: boolean;
  readonly last: SendResult;
  /** The device has been read. */
  readonly ready: boolean;
}

/** The device, and the line of an account to the API. */
interface Parts extends QueueParts {
  readonly session: (account: string) => Promise<SendOutcome>;
}

const NOTHING: QueueState = { runs: [], sending: false, last: 'done', ready: false };

/** The runs of one account on this device, and their way to the API. */
export class RunQueue {
  private state = NOTHING;
  private readonly listeners = new Set<() => void>();
  private readonly ends: (() => void)[] = [];
  private pause = FIRST_PAUSE_MS;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private again = false;

  constructor(
    private readonly account: string,
    /** Called with each run that the API has stored. */
    private readonly onTaken: (run: QueuedRun) => void,
    private readonly parts: Parts = {
      all: () => deviceRecords.all<QueuedRun>(SUBJECT),
      put: (run) => deviceRecords.put(SUBJECT, run),
      remove: (key) => deviceRecords.remove(SUBJECT, [key]),
      send: sendRun,
      session: isSignedInAs,
    },
  ) {}

  readonly snapshot = (): QueueState => this.state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** Sends what waits now, and again whenever the line may be back. */
  start(): void {
    const now = () => void this.send();
    const ifSeen = () => document.visibilityState === 'visible' && now();
    window.addEventListener('online', now);
    document.addEventListener('visibilitychange', ifSeen);
    this.ends.push(
      hearTabs(SUBJECT, () => void this.read()),
      () => window.removeEventListener('online', now),
      () => document.removeEventListener('visibilitychange', ifSeen),
      () => clearTimeout(this.timer),
    );
    void this.read().then(now);
  }

  stop(): void {
    this.ends.splice(0).forEach((end) => end());
  }

  /** Keeps a run on the device; from here on it is not lost. It is sent at once if the line is there. */
  async add(run: QueuedRun): Promise<void> {
    await this.parts.put(run);
    await this.changed();
    void this.send();
  }

  /** Puts a corrected run in the place of a refused one. */
  async replace(refused: string, run: QueuedRun): Promise<void> {
    await this.parts.put(run);
    await this.discard(refused);
    void this.send();
  }

  /** Lets a refused run be sent again as it is. */
  async retry(run: QueuedRun): Promise<void> {
    await this.add({ ...run, refusal: null });
  }

  async discard(key: string): Promise<void> {
    await this.parts.remove(key);
    await this.changed();
  }

  /** Waits until the API has answered about a run, at most `limitMs`; the run as it then is on the device. */
  settled(key: string, limitMs: number): Promise<QueuedRun | undefined> {
    return new Promise((resolve) => {
      const find = () => this.state.runs.find((run) => run.key === key);
      const finish = () => {
        clearTimeout(timer);
        stop();
        resolve(find());
      };
      const look = () => {
        const run = find();
        if (run === undefined || run.refusal !== null || this.state.last !== 'done') finish();
      };
      const timer = setTimeout(finish, limitMs);
      const stop = this.subscribe(look);
    });
  }

  /** Sends what waits; a second call while one is under way makes it look once more. */
  async send(): Promise<void> {
    clearTimeout(this.timer);
    if (this.state.sending) {
      this.again = true;
      return;
    }
    if (!this.state.runs.some(({ refusal }) => refusal === null)) return;
    this.set({ sending: true, last: 'done' });
    let last: SendResult;
    do {
      this.again = false;
      last = await oneAtATime(SUBJECT, () => this.sendNow()).catch(() => 'no-line' as const);
      // Asked meanwhile because the line may be back: what has failed was begun while it was not.
    } while (this.again && last !== 'signed-out');
    await this.read();
    this.set({ sending: false, last });
    this.plan(last);
  }

  private async sendNow(): Promise<SendResult> {
    const session = await this.parts.session(this.account);
    if (session.kind === 'unsure') return 'no-line';
    if (session.kind !== 'taken') return 'signed-out';
    return sendQueue(this.account, {
      ...this.parts,
      put: async (run) => {
        await this.parts.put(run);
        await this.changed();
      },
      remove: async (key) => {
        const taken = this.state.runs.find((run) => run.key === key);
        await this.parts.remove(key);
        await this.changed();
        if (taken !== undefined) this.onTaken(taken);
      },
    });
  }

  /** Tries again by itself after a lost line, less and less often. */
  private plan(last: SendResult): void {
    if (last !== 'no-line') {
      this.pause = FIRST_PAUSE_MS;
      return;
    }
    this.timer = setTimeout(() => void this.send(), this.pause);
    this.pause = Math.min(this.pause * 2, LONGEST_PAUSE_MS);
  }

  private async changed(): Promise<void> {
    await this.read();
    tellTabs(SUBJECT);
  }

  private async read(): Promise<void> {
    const all = await this.parts.all().catch(() => []);
    this.set({ runs: inOrder(all.filter(({ account }) => account === this.account)), ready: true });
  }

  private set(part: Partial<QueueState>): void {
    this.state = { ...this.state, ...part };
    this.listeners.forEach((listener) => listener());
  }
}
