import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { DemandService } from '../demand/demand.service.js';
import type { ExpectationDto } from '../decisions/expectation.dto.js';
import { figuresOf, setupAnswer } from '../setups/setup-figures.js';
import { refuseFillOutsideLimits } from '../setups/setup-limits.js';
import type { SetupDto } from '../setups/setups.dto.js';
import { SetupsService, type SetupFigures } from '../setups/setups.service.js';
import { ENDS, type EndFill } from '../suspension/end-inputs.js';
import { unitAt } from './bike-end.js';
import { BikeRecordsReader, type BikeRecords } from './bike-records.js';
import type { ChangeInputDto } from './changes.dto.js';
import { expectedOf } from './expectation.js';
import { StaleChange } from './workbench.errors.js';

/** Makes a change that was tried at the workbench: the bike's next set-up, and the decision with what is expected. */
@Injectable()
export class MakeChange {
  constructor(
    private readonly database: TeamDatabase,
    private readonly records: BikeRecordsReader,
    private readonly demand: DemandService,
    private readonly setups: SetupsService,
  ) {}

  /** @throws StaleChange when another set-up is in the bike than the one that the change started from. */
  async make(scope: TeamScope, input: ChangeInputDto): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const trackId = input.trackId ?? null;
      const records = await this.records.read(transaction, scope, input.bikeId, trackId);
      const current = await this.setups.latestForRevision(transaction, scope.teamId, input.bikeId);
      if ((current?.id ?? null) !== input.setupId) throw new StaleChange();
      // Without an altitude the pressures are those at the track on the day.
      const figures = figuresOf(records.bike, { fork: input.fork, shock: input.shock, note: input.note });
      const { expected, evidenceRuns } = await this.expectation(transaction, scope, records, figures);
      const { reason, testPlanId = null } = input;
      const occasion = { reason, trackId, baselineId: null, testPlanId, expected, evidenceRuns };
      return setupAnswer(await this.setups.revise(transaction, scope, records.bike, figures, occasion));
    });
  }

  /** What the engine and the demand model expect now, to be frozen with the decision. */
  private async expectation(
    transaction: Transaction,
    scope: TeamScope,
    records: BikeRecords,
    figures: SetupFigures,
  ): Promise<{ expected: ExpectationDto; evidenceRuns: number }> {
    const expected: ExpectationDto = { fork: null, shock: null };
    const runIds = new Set<string>();
    for (const end of ENDS) {
      const unit = unitAt(end, records);
      const fill = filled(end, figures);
      if (!unit || !fill) continue;
      // The engine could not be asked about a fill that the unit does not take.
      refuseFillOutsideLimits(end, unit, fill);
      const demand = records.track ? await this.demand.demand(transaction, scope.teamId, end) : null;
      expected[end] = expectedOf(end, unit, records, fill, demand);
      for (const runId of demand?.runIds ?? []) runIds.add(runId);
    }
    return { expected, evidenceRuns: runIds.size };
  }
}

function filled(end: 'fork' | 'shock', figures: SetupFigures): EndFill | null {
  if (end === 'fork') return { pressure: figures.forkPressure, spacers: figures.forkSpacers };
  const { shockPressure, shockSpacers } = figures;
  return shockPressure === null ? null : { pressure: shockPressure, spacers: shockSpacers ?? 0 };
}
