interface Owner {
  atWork: number;
  readonly line: (() => void)[];
}

/** So many things of one owner are done at a time; what is more waits in the owner's own line, first come first served. */
export class Turns {
  /** Those of whom something is being done: who asks for nothing takes no memory. */
  private readonly owners = new Map<string, Owner>();

  constructor(
    private readonly most: number,
    private readonly mostWaiting: number,
  ) {}

  /** Begins one of the owner's turns: at once, or when the promise resolves; `full` where too many wait already. */
  begin(owner: string): Promise<void> | 'now' | 'full' {
    const known = this.owners.get(owner);
    const own = known ?? { atWork: 0, line: [] };
    if (!known) this.owners.set(owner, own);
    if (own.atWork < this.most) {
      own.atWork += 1;
      return 'now';
    }
    if (own.line.length >= this.mostWaiting) return 'full';
    return new Promise((resolve) => own.line.push(resolve));
  }

  /** Ends one of the owner's turns: who has waited longest has it next. */
  end(owner: string): void {
    const own = this.owners.get(owner);
    if (!own) return;
    const next = own.line.shift();
    if (next) next();
    else own.atWork -= 1;
    if (own.atWork === 0) this.owners.delete(owner);
  }

  get waiting(): number {
    return [...this.owners.values()].reduce((sum, { line }) => sum + line.length, 0);
  }

  /** Things that are being done. */
  get atWork(): number {
    return [...this.owners.values()].reduce((sum, { atWork }) => sum + atWork, 0);
  }

  /** Owners of whom something is being done. */
  get size(): number {
    return this.owners.size;
  }
}
