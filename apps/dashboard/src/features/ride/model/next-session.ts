import { startOf, type PlannedSession } from '../../../shared/http/reads/planned-sessions.js';

/** Who comes late still reads where to be; common practice, no source. */
const SHOWN_AFTER_START_MS = 3_600_000;

/**
 * The session that a rider rides next, of those in the order in which they start: the first that has not begun an hour
 * before `now`, ms. The clock at the track is taken for that of this device.
 */
export const nextSession = (
  sessions: readonly PlannedSession[],
  riderId: string,
  now: number,
): PlannedSession | undefined =>
  sessions.find(
    (session) =>
      session.riderIds.includes(riderId) && Date.parse(startOf(session)) + SHOWN_AFTER_START_MS > now,
  );
