import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { errorForLog } from '../operations/error-for-log.js';
import { TeamDatabase } from './team-database.js';

/** A phone that was away for so long may still repeat a request and get its first answer. */
const ANSWERS_KEPT = '30 days';
const TRIES_KEPT = '1 day';
const EVERY_MS = 6 * 3_600_000;

/** Removes what nobody needs any more, at the start and every six hours: stored answers, ended sign-ins, old tries. */
@Injectable()
export class Purge implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(Purge.name);
  private timer: NodeJS.Timeout | undefined;

  constructor(private readonly database: TeamDatabase) {}

  onApplicationBootstrap(): void {
    void this.run();
    this.timer = setInterval(() => void this.run(), EVERY_MS).unref();
  }

  onApplicationShutdown(): void {
    clearInterval(this.timer);
  }

  private async run(): Promise<void> {
    try {
      await this.database.asStranger((statements) =>
        statements.query('select purge_stale($1, $2)', [ANSWERS_KEPT, TRIES_KEPT]),
      );
    } catch (error) {
      // The next turn does it: nothing depends on it.
      this.logger.warn('Nothing was purged.', errorForLog(error));
    }
  }
}
