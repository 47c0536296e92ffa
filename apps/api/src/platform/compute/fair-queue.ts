/** What waits for its turn, by whom it is for: each of them in turn gets one thing done, however much one of them asks. */
export class FairQueue<Item> {
  /** In the order in which it is their turn. */
  private readonly byOwner = new Map<string, Item[]>();

  add(owner: string, item: Item): void {
    const items = this.byOwner.get(owner);
    if (items) items.push(item);
    else this.byOwner.set(owner, [item]);
  }

  /** Takes what is next; undefined where nothing waits. */
  next(): Item | undefined {
    const [turn] = this.byOwner;
    if (!turn) return undefined;
    const [owner, items] = turn;
    const item = items.shift();
    this.byOwner.delete(owner);
    if (items.length > 0) this.byOwner.set(owner, items);
    return item;
  }

  waitingOf(owner: string): number {
    return this.byOwner.get(owner)?.length ?? 0;
  }

  get size(): number {
    return [...this.byOwner.values()].reduce((sum, { length }) => sum + length, 0);
  }
}
