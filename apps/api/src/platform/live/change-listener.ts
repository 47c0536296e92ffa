import { Inject, Injectable, type OnModuleDestroy } from '@nestjs/common';
import { Client } from 'pg';
import type { Config } from '../../config/config.js';
import { CONFIG } from '../../config/config.token.js';
import { CHANGES_CHANNEL, readChange, type TeamChange } from './team-change.js';

/** Somebody who wants to hear of changes. */
export interface Hearer {
  changed(change: TeamChange): void;
  /** From here on changes are heard; what happened before may have been missed. */
  listening(): void;
  /** Changes cannot be heard now: the database is away. */
  deaf(): void;
}

/** How its connection is called in the database's list of sessions. */
export const LISTENER_NAME = 'loamledger events';

/** How long to wait before the connection is tried again, and how often it is asked whether it still lives, ms. */
const RETRY_MS = 1_000;
const ASK_MS = 15_000;
const PATIENCE_MS = 5_000;

/**
 * The one connection of this process that listens to what all processes announce. It is opened when somebody wants to
 * hear, and opened again by itself after the database was away.
 */
@Injectable()
export class ChangeListener implements OnModuleDestroy {
  private hearer: Hearer | undefined;
  private client: Client | undefined;
  private stopped = false;
  private wake: () => void = () => undefined;
  private heard = false;

  constructor(@Inject(CONFIG) private readonly config: Config) {}

  /** Whether changes are heard at this moment. */
  get isListening(): boolean {
    return this.heard;
  }

  /** Begins to listen for `hearer`, for as long as the process lives. */
  listenFor(hearer: Hearer): void {
    if (this.hearer || this.stopped) return;
    this.hearer = hearer;
    void this.keepListening(hearer);
  }

  async onModuleDestroy(): Promise<void> {
    this.stopped = true;
    this.wake();
    await this.client?.end().catch(() => undefined);
  }

  private async keepListening(hearer: Hearer): Promise<void> {
    while (!this.stopped) {
      await this.listenOnce(hearer).catch(() => undefined);
      if (this.heard) {
        this.heard = false;
        hearer.deaf();
      }
      if (!this.stopped) await this.pause(RETRY_MS);
    }
  }

  /** Ends when the connection does. */
  private async listenOnce(hearer: Hearer): Promise<void> {
    const client = new Client({
      connectionString: this.config.appDatabaseUrl,
      connectionTimeoutMillis: PATIENCE_MS,
      query_timeout: PATIENCE_MS,
      keepAlive: true,
      application_name: LISTENER_NAME,
    });
    this.client = client;
    const lost = new Promise<void>((resolve) => {
      client.once('error', () => resolve());
      client.once('end', () => resolve());
    });
    // A second error after the first must not bring the process down.
    client.on('error', () => undefined);
    client.on('notification', ({ payload }) => {
      const change = readChange(payload);
      if (change) hearer.changed(change);
    });
    try {
      await client.connect();
      await client.query(`listen ${CHANGES_CHANNEL}`);
      this.heard = true;
      hearer.listening();
      await Promise.race([lost, this.askOnAndOn(client)]);
    } finally {
      // A connection that is dead without saying so would never end by itself.
      void client.end().catch(() => undefined);
    }
  }

  /** Rejects when the connection no longer answers: one that is cut off says nothing of its own. */
  private async askOnAndOn(client: Client): Promise<void> {
    while (!this.stopped) {
      await this.pause(ASK_MS);
      await client.query('select 1');
    }
  }

  private pause(duration: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, duration);
      timer.unref();
      this.wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }
}
