import type { Transaction } from '../../../platform/database/team-database.js';
import type { TeamScope } from '../../../platform/http/scope.js';
import type { Bike } from '../../bikes/bikes.service.js';
import { figuresOf, setupAnswer, type SetupFigures } from '../../setups/setup-figures.js';
import type { Setup, SetupsService } from '../../setups/setups.service.js';
import { NoSetupBefore } from './csv.errors.js';
import type { SetupCells } from './run-messages.js';

/** Pressures that differ by less are the same, Pa: rounding of psi, far below what a gauge shows. */
const SAME_PRESSURE = 1;
/** The same for the altitude (m) and the temperature (K) where a pressure was pumped. */
const SAME_PLACE = 1e-6;

interface BikeSetups {
  /** Newest first. */
  readonly revisions: Setup[];
  /** The set-up of the bike's run before in the file, else its newest. */
  current: Setup | undefined;
}

/** Finds the set-up that each run of a file was ridden with, and makes the revisions that are not there yet. */
export class LineSetups {
  private readonly bikes = new Map<string, BikeSetups>();
  /** Revisions made so far. */
  made = 0;

  constructor(
    private readonly setups: SetupsService,
    private readonly transaction: Transaction,
    private readonly scope: TeamScope,
  ) {}

  /**
   * Without cells: the set-up of the bike's run before in the file, else the bike's newest. With cells: the newest
   * revision with exactly these figures, else a new one; an end without cells stays as it was.
   * @throws Refusal that names the field.
   */
  async of(bike: Bike, cells: SetupCells | null, day: string): Promise<Setup> {
    const known = await this.known(bike);
    const setup = cells ? await this.withFigures(bike, known, cells, day) : known.current;
    if (!setup) throw new NoSetupBefore();
    known.current = setup;
    return setup;
  }

  private async withFigures(bike: Bike, known: BikeSetups, cells: SetupCells, day: string): Promise<Setup> {
    const before = known.current && setupAnswer(known.current);
    const fork = cells.fork ?? before?.fork;
    if (!fork) throw new NoSetupBefore();
    const figures = figuresOf(bike, { ...cells, fork, shock: cells.shock ?? before?.shock ?? null });
    const found = known.revisions.find((revision) => isSame(revision, figures));
    if (found) return found;
    const occasion = {
      reason: `From the notebook, ${day}.`,
      trackId: null,
      baselineId: null,
      expected: null,
    };
    const made = await this.setups.revise(this.transaction, this.scope, bike, figures, occasion);
    known.revisions.unshift(made);
    this.made += 1;
    return made;
  }

  private async known(bike: Bike): Promise<BikeSetups> {
    const known = this.bikes.get(bike.id);
    if (known) return known;
    const oldestFirst = await this.setups.ofBike(this.transaction, this.scope.teamId, bike.id);
    const revisions = oldestFirst.toReversed();
    const read: BikeSetups = { revisions, current: revisions[0] };
    this.bikes.set(bike.id, read);
    return read;
  }
}

function isSame(setup: Setup, figures: SetupFigures): boolean {
  return (
    EQUAL.every((field) => setup[field] === figures[field]) &&
    isNear(setup.forkPressure, figures.forkPressure, SAME_PRESSURE) &&
    isNear(setup.shockPressure, figures.shockPressure, SAME_PRESSURE) &&
    isNear(setup.filledAltitude, figures.filledAltitude, SAME_PLACE) &&
    isNear(setup.filledTemperature, figures.filledTemperature, SAME_PLACE)
  );
}

const EQUAL = [
  'forkUnitId',
  'forkSpacers',
  'forkRebound',
  'forkCompression',
  'shockUnitId',
  'shockSpacers',
  'shockRebound',
  'shockCompression',
] as const;

const isNear = (a: number | null, b: number | null, tolerance: number) =>
  a === null || b === null ? a === b : Math.abs(a - b) < tolerance;
