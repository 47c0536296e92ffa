import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { ExpectationDto } from '../decisions/expectation.dto.js';
import { DemandService } from '../demand/demand.service.js';
import { filledAtOf, fillOf, unitIdAt } from '../setups/setup-fill.js';
import { refuseFillOutsideLimits } from '../setups/setup-limits.js';
import type { SetupFigures } from '../setups/setups.service.js';
import { ENDS } from '../suspension/end-inputs.js';
import { unitAt } from './bike-end.js';
import type { BikeRecords } from './bike-records.js';
import { expectedOf } from './expectation.js';

/** What is expected of a set-up, and how many runs are behind it. */
export interface Frozen {
  readonly expected: ExpectationDto;
  readonly evidenceRuns: number;
}

/** What the engine and the demand model expect of a set-up now, to be frozen with its decision. */
@Injectable()
export class FreezeExpectation {
  constructor(private readonly demand: DemandService) {}

  /**
   * To be asked before the bike's set-ups are locked: it may wait for a fit that somebody makes who will lock them.
   * An end whose unit is not in the bike any more expects nothing.
   * @throws FillOutsideLimits; SpringInputError for a fill that the engine cannot compute.
   */
  async of(
    transaction: Transaction,
    teamId: string,
    records: BikeRecords,
    figures: SetupFigures,
  ): Promise<Frozen> {
    const expected: ExpectationDto = { fork: null, shock: null };
    const runIds = new Set<string>();
    for (const end of ENDS) {
      const unit = unitAt(end, records);
      if (!unit || unitIdAt(end, figures) !== unit.id) continue;
      const fill = fillOf(end, figures);
      // The engine could not be asked about a fill that the unit does not take.
      refuseFillOutsideLimits(end, unit, fill);
      const demand = records.track ? await this.demand.demand(transaction, teamId, end) : null;
      expected[end] = expectedOf(end, unit, records, { fill, filledAt: filledAtOf(figures) }, demand);
      for (const runId of demand?.runIds ?? []) runIds.add(runId);
    }
    return { expected, evidenceRuns: runIds.size };
  }
}
