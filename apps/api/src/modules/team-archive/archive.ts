import { LARGEST_FILE_BYTES } from '../../platform/http/file-room.js';
import type { Role } from '../../platform/http/scope.js';

export const FORMAT = 'loamledger-team';
/** Goes up when an archive of before can no longer be read as it is. Tables and columns that may be null do not count. */
export const VERSION = 1;
export const ARCHIVE_TYPE = 'application/vnd.loamledger.team+json';
/** Ten seasons of a large team; it is held in memory while it is read. */
export const ARCHIVE_LIMIT_BYTES = LARGEST_FILE_BYTES;
/** Twice as many as so large an archive has; each takes room and time however short it is. */
export const ARCHIVE_LIMIT_VALUES = 3_000_000;

/** Somebody whom records of the team name. */
export interface ArchivedPerson {
  /** The account's where the archive was made: joins records to the person, and is nobody's elsewhere. */
  readonly id: string;
  /** null: has left the team, so nothing is known of them. */
  readonly displayName: string | null;
  readonly email: string | null;
  readonly role: Role | null;
  readonly riderId: string | null;
}

export type ArchivedRow = Readonly<Record<string, unknown>> & { readonly id: string };

/** A whole team as one document. */
export interface TeamArchive {
  readonly format: typeof FORMAT;
  readonly version: number;
  readonly exportedAt: string;
  readonly team: { readonly name: string; readonly evidenceVersion: number };
  readonly people: readonly ArchivedPerson[];
  /** Rows by table, SI units, without the team. */
  readonly records: Readonly<Record<string, readonly ArchivedRow[]>>;
}
