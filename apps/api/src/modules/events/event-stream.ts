import { Readable } from 'node:stream';
import { eventText, messageFor, type StreamReader } from './event-message.js';
import type { TeamChange } from '../../platform/live/team-change.js';

/** Bytes that a reader may be behind before its stream is cut: it comes back and reads everything anew. */
const MOST_UNREAD = 64 * 1024;
/** How long a browser waits before it comes back, ms. */
const RETRY_MS = 2_000;

/** The events of one team as one reader gets them, until it goes or is sent away. */
export class EventStream {
  readonly body = new Readable({ read: () => undefined, highWaterMark: MOST_UNREAD });

  constructor(
    readonly reader: StreamReader,
    /** Proof of who reads, asked for again and again. */
    readonly token: string,
  ) {
    this.push(`retry: ${RETRY_MS}\n\n`);
  }

  /** The reader hears changes from here on; what it has read before may be old. */
  ready(): void {
    this.push(eventText('ready', {}));
  }

  /** Changes cannot be heard at the moment; a `ready` follows when they can. */
  away(): void {
    this.push(eventText('away', {}));
  }

  changed(change: TeamChange): void {
    const message = messageFor(this.reader, change);
    if (message) this.push(eventText('change', message));
  }

  /** A comment, so that no proxy takes the line for dead, and a dead one is noticed. */
  beat(): void {
    this.push(': still here\n\n');
  }

  close(): void {
    this.body.push(null);
  }

  private push(text: string): void {
    if (this.body.destroyed || this.body.readableEnded) return;
    if (this.body.readableLength > MOST_UNREAD) this.body.destroy();
    else this.body.push(text);
  }
}
