import type { TeamChange } from '../../platform/live/team-change.js';
import type { Role } from '../../platform/http/scope.js';

/** Who reads a stream. */
export interface StreamReader {
  readonly teamId: string;
  readonly accountId: string;
  readonly role: Role;
  readonly riderId: string | null;
}

/** What a reader is told of a change: what kind of thing, and whose. */
export interface ChangeMessage {
  readonly kind: string;
  readonly bikeId: string | null;
  readonly riderId: string | null;
}

/** Kinds that only concern the process itself. */
const INNER = new Set(['access']);

/**
 * What the reader may know of the change; undefined: nothing. A rider is told of what is their own, and of what is the
 * team's only that it has changed.
 */
export function messageFor(reader: StreamReader, change: TeamChange): ChangeMessage | undefined {
  if (change.team !== reader.teamId || INNER.has(change.kind)) return undefined;
  if (reader.role !== 'rider') return { kind: change.kind, bikeId: change.bike, riderId: change.rider };
  if (change.rider === null) return { kind: change.kind, bikeId: null, riderId: null };
  if (change.rider !== reader.riderId) return undefined;
  return { kind: change.kind, bikeId: change.bike, riderId: change.rider };
}

/** One event in the form of a `text/event-stream`. */
export const eventText = (event: string, data: object): string =>
  `event: ${event}\ndata: ${JSON.stringify(data)}\n\n`;
