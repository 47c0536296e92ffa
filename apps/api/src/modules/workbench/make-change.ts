import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { figuresOf, setupAnswer } from '../setups/setup-figures.js';
import type { SetupDto } from '../setups/setups.dto.js';
import { SetupsService } from '../setups/setups.service.js';
import { BikeRecordsReader } from './bike-records.js';
import type { ChangeInputDto } from './changes.dto.js';
import { FreezeExpectation } from './freeze-expectation.js';
import { StaleChange } from './workbench.errors.js';

/** Makes a change that was tried at the workbench: the bike's next set-up, and the decision with what is expected. */
@Injectable()
export class MakeChange {
  constructor(
    private readonly database: TeamDatabase,
    private readonly records: BikeRecordsReader,
    private readonly expectation: FreezeExpectation,
    private readonly setups: SetupsService,
  ) {}

  /** @throws StaleChange when another set-up is in the bike than the one that the change started from. */
  async make(scope: TeamScope, input: ChangeInputDto): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const trackId = input.trackId ?? null;
      const records = await this.records.read(transaction, scope, input.bikeId, trackId);
      // Without an altitude the pressures are those at the track on the day.
      const figures = figuresOf(records.bike, { fork: input.fork, shock: input.shock, note: input.note });
      const { expected, evidenceRuns } = await this.expectation.of(
        transaction,
        scope.teamId,
        records,
        figures,
      );
      const seen = new Map([[input.bikeId, input.setupId]]);
      if ((await this.setups.revisedSince(transaction, scope.teamId, seen)).length > 0)
        throw new StaleChange();
      const { reason, testPlanId = null } = input;
      const occasion = { reason, trackId, baselineId: null, testPlanId, expected, evidenceRuns };
      return setupAnswer(await this.setups.revise(transaction, scope, records.bike, figures, occasion));
    });
  }
}
