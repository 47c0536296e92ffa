import { gaugePascalFromPsi } from '@loamledger/units';
import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { setupAnswer } from '../setups/setup-figures.js';
import { SetupsService, type SetupFigures } from '../setups/setups.service.js';
import type { SetupDto } from '../setups/setups.dto.js';
import { expectationOf } from './baseline-answer.js';
import type { TakeBaselineDto } from './baselines.dto.js';
import { NewerBaseline, NothingToTake } from './baselines.errors.js';
import { BaselinesQueries } from './baselines.queries.js';
import { BaselinesService } from './baselines.service.js';
import type { EndBaselineDto } from './end-baseline.dto.js';
import type { EvaluatedFillDto } from './fill.dto.js';

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
      const offered = await this.queries.require(transaction, scope.teamId, id);
      const { trackId, bikeId, condition, airTemperature, stationPressure } = offered;
      const venue = { condition, airTemperature, stationPressure };
      const bike = await this.bikes.requireVisible(transaction, scope, bikeId);
      const [baseline] = await this.baselines.current(transaction, scope, { trackId, bikeId, venue });
      if (!baseline || baseline.id !== id) throw new NewerBaseline();
      const fork = fillToTake(baseline.fork, input.wholeWay ?? false);
      const shock = baseline.shock && fillToTake(baseline.shock, input.wholeWay ?? false);
      if (!isChange(baseline.fork, fork) && !(baseline.shock && isChange(baseline.shock, shock))) {
        throw new NothingToTake();
      }
      const before = await this.setups.latest(transaction, scope.teamId, bikeId);
      const figures: SetupFigures | null = fork && {
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
      };
      if (!figures || (bike.shockUnitId !== null && !shock)) throw new NothingToTake();
      const setup = await this.setups.revise(transaction, scope, bike, figures, {
        reason: input.reason ?? 'Baseline for this track.',
        trackId,
        baselineId: id,
        expected: {
          fork: fork && expectationOf(baseline.fork, fork),
          shock: baseline.shock && shock && expectationOf(baseline.shock, shock),
        },
        evidenceRuns: baseline.runCount,
      });
      return setupAnswer(setup);
    });
  }
}

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
