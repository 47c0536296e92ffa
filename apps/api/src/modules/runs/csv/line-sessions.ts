import type { Transaction } from '../../../platform/database/team-database.js';
import type { SessionInputDto } from '../../sessions/sessions.dto.js';
import { isInWeather, type Session, type SessionsService } from '../../sessions/sessions.service.js';

/** Finds the session of each run of a file, opens those that are not there yet, and locks them. */
export class LineSessions {
  /** By track, day and condition; the one used last comes first. */
  private readonly used = new Map<string, Session[]>();
  /** Sessions opened so far. */
  opened = 0;

  constructor(
    private readonly sessions: SessionsService,
    private readonly transaction: Transaction,
    private readonly teamId: string,
  ) {}

  /** The session in the run's weather; weather that is left out is that of the run before, else any. */
  async of(input: SessionInputDto): Promise<Session> {
    const key = `${input.trackId} ${input.day} ${input.condition}`;
    const used = this.used.get(key) ?? [];
    const session = used.find((candidate) => isInWeather(candidate, input)) ?? (await this.ensure(input));
    this.used.set(key, [session, ...used.filter(({ id }) => id !== session.id)]);
    return session;
  }

  private async ensure(input: SessionInputDto): Promise<Session> {
    const { session, opened } = await this.sessions.ensure(this.transaction, this.teamId, input);
    if (opened) this.opened += 1;
    await this.sessions.lock(this.transaction, this.teamId, session.id);
    return session;
  }
}
