import type { BikeKey } from './bikes.js';
import type { SetUpChange, SetUpReturn } from './scenario.js';
import type { End } from '../modules/suspension/end-inputs.js';
import type { TrueFill } from './true-ends.js';

/** What is really in a bike. */
export type TrueSetUp = Readonly<Record<End, TrueFill>>;

/** Follows what is in each bike while the season goes on. */
export class SetUpsInForce {
  private readonly revisions = new Map<BikeKey, TrueSetUp[]>();

  /** @param gaugeError draws the error of the gauge for one filling, psi. */
  constructor(private readonly gaugeError: () => number) {}

  /** Fills the bike anew. */
  apply(change: SetUpChange | SetUpReturn): void {
    const revisions = this.revisions.get(change.bike) ?? [];
    this.revisions.set(change.bike, [...revisions, this.filled(change, revisions)]);
  }

  /** What is in the bike now. @throws Error for a bike that was never filled: a mistake in the scenario. */
  of(bike: BikeKey): TrueSetUp {
    const setUp = this.revisions.get(bike)?.at(-1);
    if (!setUp) throw new Error(`The scenario rides ${bike} before its first set-up.`);
    return setUp;
  }

  private filled(change: SetUpChange | SetUpReturn, revisions: readonly TrueSetUp[]): TrueSetUp {
    if ('backToRevision' in change) {
      const earlier = revisions[change.backToRevision - 1];
      if (!earlier) throw new Error(`${change.bike} has no revision ${change.backToRevision} to go back to.`);
      const { fork, shock } = earlier;
      return {
        fork: { ...fork, gaugeErrorPsi: this.gaugeError() },
        shock: { ...shock, gaugeErrorPsi: this.gaugeError() },
      };
    }
    const inWorkshop = change.inWorkshop ?? false;
    return {
      fork: { setUp: change.fork, gaugeErrorPsi: this.gaugeError(), inWorkshop },
      shock: { setUp: change.shock, gaugeErrorPsi: this.gaugeError(), inWorkshop },
    };
  }
}
