import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { Refusal } from '../../platform/errors/refusal.js';
import { ChangeListener, type Hearer } from '../../platform/live/change-listener.js';
import type { TeamChange } from '../../platform/live/team-change.js';
import { Gauges } from '../../platform/operations/gauges.js';
import { AccessNow } from '../accounts/access-now.js';
import { EventStream } from './event-stream.js';
import type { StreamReader } from './event-message.js';

const BEAT_MS = 15_000;
/** A sign-in can run out without any row being changed: everybody is asked again so often, in beats. */
const BEATS_BETWEEN_CHECKS = 4;
/** Windows of one person on one process: far more than anybody has open. */
const MOST_STREAMS_OF_ONE = 20;

class TooManyStreams extends Refusal {
  override readonly retryAfterSeconds = 5;

  constructor() {
    super(
      'events.too-many',
      'too-many-requests',
      `At most ${MOST_STREAMS_OF_ONE} open event streams for one account.`,
    );
  }
}

/** The open event streams of this process, each fed with what its reader may know. */
@Injectable()
export class TeamStreams implements Hearer, OnModuleDestroy {
  private readonly streams = new Set<EventStream>();
  private timer: NodeJS.Timeout | undefined;
  private beats = 0;
  private closing = false;

  constructor(
    private readonly listener: ChangeListener,
    private readonly access: AccessNow,
    gauges: Gauges,
  ) {
    gauges.add(
      {
        name: 'loamledger_event_streams',
        help: 'Open streams of live events.',
        read: () => this.streams.size,
      },
      {
        name: 'loamledger_event_listening',
        help: 'Whether changes announced by the database are heard: 1 or 0.',
        read: () => Number(listener.isListening),
      },
    );
  }

  /** @throws TooManyStreams */
  open(reader: StreamReader, token: string): EventStream {
    const others = [...this.streams].filter((stream) => stream.reader.accountId === reader.accountId);
    if (others.length >= MOST_STREAMS_OF_ONE) throw new TooManyStreams();
    const stream = new EventStream(reader, token);
    if (this.closing) {
      stream.close();
      return stream;
    }
    this.streams.add(stream);
    stream.body.once('close', () => this.streams.delete(stream));
    this.timer ??= setInterval(() => this.beat(), BEAT_MS).unref();
    this.listener.listenFor(this);
    if (this.listener.isListening) stream.ready();
    // The right to it can have ended between the guard's question and here: nobody was told, as there was no stream yet.
    void this.check((one) => one === stream);
    return stream;
  }

  changed(change: TeamChange): void {
    if (change.kind === 'access') {
      void this.check(({ reader }) => reader.accountId === change.account);
      return;
    }
    for (const stream of this.streams) stream.changed(change);
  }

  listening(): void {
    // Rights may have changed unheard.
    void this.check(() => true);
    for (const stream of this.streams) stream.ready();
  }

  deaf(): void {
    for (const stream of this.streams) stream.away();
  }

  /** Lets the server drain: a stream would hold it open for ever. */
  onModuleDestroy(): void {
    this.closing = true;
    clearInterval(this.timer);
    for (const stream of this.streams) stream.close();
  }

  private beat(): void {
    for (const stream of this.streams) stream.beat();
    this.beats = (this.beats + 1) % BEATS_BETWEEN_CHECKS;
    if (this.beats === 0) void this.check(() => true);
  }

  /** Closes the streams of readers who are no longer signed in, or no longer what they were in the team. */
  private async check(concerns: (stream: EventStream) => boolean): Promise<void> {
    for (const stream of [...this.streams].filter(concerns)) {
      try {
        const { teamId, role, riderId } = stream.reader;
        const now = await this.access.of(stream.token, teamId);
        if (now?.role !== role || now.riderId !== riderId) stream.close();
      } catch {
        // The database is away: nobody's rights can have changed there, and the listener says when it is back.
      }
    }
  }
}
