import { gaugePascalFromPsi } from '@loamledger/units';
import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import type { FieldProblem } from '../../platform/errors/refusal.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { setupAnswer } from '../setups/setup-figures.js';
import { SetupsService, type Occasion, type SetupFigures } from '../setups/setups.service.js';
import type { SetupDto } from '../setups/setups.dto.js';
import { expectationOf } from './baseline-answer.js';
import type { TakeBaselineDto, TakenDto, TakeSeveralDto } from './baselines.dto.js';
import { NewerBaseline, NotAllTaken, NothingToTake } from './baselines.errors.js';
import { BaselinesQueries } from './baselines.queries.js';
import { BaselinesService } from './baselines.service.js';
import type { EndBaselineDto } from './end-baseline.dto.js';
import type { EvaluatedFillDto } from './fill.dto.js';

/** A baseline that can be taken, and what becomes of the bike. */
interface Ready {
  readonly bike: Bike;
  /** The bike's set-up when the baseline was looked at; null where it had none. */
  readonly fromSetupId: string | null;
  readonly figures: SetupFigures;
  readonly occasion: Occasion;
}

/** Takes an offered baseline: the bike's next set-up, and the decision record with what is expected of it. */
@Injectable()
export class TakeBaseline {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: BaselinesQueries,
    private readonly baselines: BaselinesService,
    private readonly bikes: BikesService,
    private readonly setups: SetupsService,
  ) {}

  /** @throws NewerBaseline when something behind it has changed, NothingToTake when it recommends no change. */
  async take(scope: TeamScope, id: string, input: TakeBaselineDto): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const ready = await this.prepare(transaction, scope, id, input);
      if ((await this.revisedSince(transaction, scope, [ready])).length > 0) throw new NewerBaseline();
      return this.revise(transaction, scope, ready);
    });
  }

  /**
   * Takes baselines of several bikes, or none of them. All are looked at before the first is taken, so that a refusal
   * names every one that cannot be.
   * @throws NotAllTaken
   */
  async takeSeveral(scope: TeamScope, { baselines, ...common }: TakeSeveralDto): Promise<TakenDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const ready: Ready[] = [];
      const refused: FieldProblem[] = [];
      for (const [i, { baselineId, ...way }] of baselines.entries()) {
        const refuse = (why: string) => refused.push(refusalOf(baselines, i, why));
        try {
          const next = await this.prepare(transaction, scope, baselineId, { ...common, ...way });
          if (ready.some(({ bike }) => bike.id === next.bike.id)) refuse('one baseline for each bike');
          ready.push(next);
        } catch (error) {
          if (error instanceof NewerBaseline) refuse(STALE);
          else if (error instanceof NothingToTake) refuse('one that changes something');
          else throw error;
        }
      }
      if (refused.length > 0) throw new NotAllTaken(refused);
      const changed = await this.revisedSince(transaction, scope, ready);
      if (changed.length > 0) {
        const places = changed.map((bikeId) => ready.findIndex(({ bike }) => bike.id === bikeId));
        throw new NotAllTaken(places.map((place) => refusalOf(baselines, place, STALE)));
      }
      const items: SetupDto[] = [];
      for (const next of ready) items.push(await this.revise(transaction, scope, next));
      return { items };
    });
  }

  /**
   * The bikes that somebody has set up anew since they were looked at; nobody can from now on. Not before all are looked
   * at: to look may take the lock of the track, which others take before a bike's.
   */
  private revisedSince(
    transaction: Transaction,
    { teamId }: TeamScope,
    ready: readonly Ready[],
  ): Promise<string[]> {
    const seen = new Map(ready.map(({ bike, fromSetupId }) => [bike.id, fromSetupId]));
    return this.setups.revisedSince(transaction, teamId, seen);
  }

  private async revise(transaction: Transaction, scope: TeamScope, ready: Ready): Promise<SetupDto> {
    return setupAnswer(
      await this.setups.revise(transaction, scope, ready.bike, ready.figures, ready.occasion),
    );
  }

  /** What taking the baseline would make of the bike. */
  private async prepare(
    transaction: Transaction,
    scope: TeamScope,
    id: string,
    input: TakeBaselineDto,
  ): Promise<Ready> {
    const offered = await this.queries.require(transaction, scope.teamId, id);
    const { trackId, bikeId, condition, airTemperature, stationPressure } = offered;
    const venue = { condition, airTemperature, stationPressure };
    const bike = await this.bikes.requireVisible(transaction, scope, bikeId);
    // Before the baseline is read: a set-up that is made in between is then told from this one.
    const before = await this.setups.latest(transaction, scope.teamId, bikeId);
    const [baseline] = await this.baselines.current(transaction, scope, { trackId, bikeId, venue });
    if (!baseline || baseline.id !== id) throw new NewerBaseline();
    const fork = fillToTake(baseline.fork, input.wholeWay ?? false);
    const shock = baseline.shock && fillToTake(baseline.shock, input.wholeWay ?? false);
    if (!isChange(baseline.fork, fork) && !(baseline.shock && isChange(baseline.shock, shock))) {
      throw new NothingToTake();
    }
    if (!fork || (bike.shockUnitId !== null && !shock)) throw new NothingToTake();
    return {
      bike,
      fromSetupId: before?.id ?? null,
      figures: {
        forkUnitId: bike.forkUnitId,
        ...forkFigures(fork),
        forkRebound: baseline.fork.clicks?.reboundClicks ?? before?.forkRebound ?? null,
        forkCompression: baseline.fork.clicks?.compressionClicks ?? before?.forkCompression ?? null,
        shockUnitId: shock ? bike.shockUnitId : null,
        shockPressure: shock && gaugePascalFromPsi(shock.pressurePsi),
        shockSpacers: shock && shock.spacers,
        shockRebound: baseline.shock?.clicks?.reboundClicks ?? before?.shockRebound ?? null,
        shockCompression: baseline.shock?.clicks?.compressionClicks ?? before?.shockCompression ?? null,
        // A baseline's pressures are those at the track.
        filledAltitude: null,
        filledTemperature: null,
        note: '',
      },
      occasion: {
        reason: input.reason ?? 'Baseline for this track.',
        trackId,
        baselineId: id,
        expected: {
          fork: expectationOf(baseline.fork, fork),
          shock: baseline.shock && shock && expectationOf(baseline.shock, shock),
        },
        evidenceRuns: baseline.runCount,
      },
    };
  }
}

/** Why a baseline that was offered is no longer. */
const STALE = 'one that still holds: something behind it has changed';

const refusalOf = (baselines: TakeSeveralDto['baselines'], index: number, allowed: string): FieldProblem => ({
  field: `baselines.${index}.baselineId`,
  given: baselines[index]?.baselineId ?? '',
  allowed,
});

/** What goes into one end: the next step, the whole way, or what is in it where nothing is recommended. */
function fillToTake(end: EndBaselineDto, wholeWay: boolean): EvaluatedFillDto | null {
  return (wholeWay ? end.steps.at(-1) : end.steps[0]) ?? end.current;
}

const isChange = (end: EndBaselineDto, fill: EvaluatedFillDto | null): boolean =>
  fill !== null && (fill.spacers !== end.current?.spacers || fill.pressurePsi !== end.current.pressurePsi);

const forkFigures = (fill: EvaluatedFillDto) => ({
  forkPressure: gaugePascalFromPsi(fill.pressurePsi),
  forkSpacers: fill.spacers,
});
