/** The channel of Postgres on which every transaction announces what it has changed. */
export const CHANGES_CHANNEL = 'team_changes';

/** What a committed transaction has changed, as its trigger has announced it: kinds and ids, never contents. */
export interface TeamChange {
  /** null: no team's, but an account's. */
  readonly team: string | null;
  readonly kind: string;
  readonly bike: string | null;
  /** Whose it is; null: the team's. */
  readonly rider: string | null;
  /** Whose rights have changed, where the kind is `access`. */
  readonly account: string | null;
}

/** The change behind an announcement; undefined for one that is not ours. */
export function readChange(payload: string | undefined): TeamChange | undefined {
  try {
    const given = JSON.parse(payload ?? '') as Partial<Record<keyof TeamChange, unknown>>;
    if (typeof given.kind !== 'string') return undefined;
    return {
      kind: given.kind,
      team: textOrNull(given.team),
      bike: textOrNull(given.bike),
      rider: textOrNull(given.rider),
      account: textOrNull(given.account),
    };
  } catch {
    return undefined;
  }
}

const textOrNull = (value: unknown): string | null => (typeof value === 'string' ? value : null);
