/** Plans that the server keeps for one connection: some tens of kB each. More than the service has statements. */
const MOST_KEPT = 200;
/** Texts that have been seen once; what comes but once, as an insert of so many rows, soon makes room. */
const MOST_SEEN = 500;

/**
 * Which statements of one connection the server should keep: those that come again, as far as there is room. A
 * statement is known by its text.
 */
export class RepeatedStatements {
  private readonly names = new Map<string, string>();
  private readonly seen = new Set<string>();
  private given = 0;

  /** The name under which the server is to keep the statement; undefined while it has come but once. */
  nameOf(text: string): string | undefined {
    const name = this.names.get(text);
    if (name !== undefined) return name;
    if (!this.seen.delete(text)) {
      if (this.seen.size >= MOST_SEEN) this.seen.clear();
      this.seen.add(text);
      return undefined;
    }
    if (this.names.size >= MOST_KEPT) return undefined;
    const given = `s${(this.given += 1)}`;
    this.names.set(text, given);
    return given;
  }

  /** What the server kept of the statement is of no use any more: it comes anew, and gets another name later. */
  forget(text: string): void {
    this.names.delete(text);
  }
}
