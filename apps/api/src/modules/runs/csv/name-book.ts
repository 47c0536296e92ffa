/** Something of the team that a person calls by its name. */
export interface Named {
  readonly id: string;
  readonly name: string;
}

/** What a name stands for, or what would have been allowed. */
export type Found<Thing> = { readonly thing: Thing } | { readonly allowed: string };

const MAX_NAMED = 8;

/** Finds riders, bikes or tracks by their names, whatever the case. */
export class NameBook<Thing extends Named> {
  private readonly byName = new Map<string, Thing[]>();

  constructor(
    /** The things in a sentence, e.g. `a track of this team`. */
    private readonly kind: string,
    private readonly things: readonly Thing[],
  ) {
    for (const thing of things) {
      const key = keyOf(thing.name);
      this.byName.set(key, [...(this.byName.get(key) ?? []), thing]);
    }
  }

  find(name: string): Found<Thing> {
    const candidates = this.byName.get(keyOf(name)) ?? [];
    const exact = candidates.filter((candidate) => candidate.name === name);
    const [thing, another] = exact.length > 0 ? exact : candidates;
    if (!thing) return { allowed: this.known() };
    return another ? { allowed: `${this.kind} whose name no other has` } : { thing };
  }

  private known(): string {
    if (this.things.length === 0) return `${this.kind}; it has none yet`;
    const names = this.things.slice(0, MAX_NAMED).map(({ name }) => name);
    const more = this.things.length - names.length;
    return `${this.kind}: ${names.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  }
}

const keyOf = (name: string) => name.trim().normalize('NFC').toLowerCase();
