import {
  DEMAND_MODEL_VERSION,
  type DemandFit,
  type DemandReading,
  type ReadingDiagnosis,
} from '@loamledger/evidence';
import { Injectable } from '@nestjs/common';
import { ComputeThread } from '../../platform/compute/compute-thread.js';
import { needPlaceToCompute } from '../../platform/database/computing-places.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { RunsService, type CountingReading } from '../runs/runs.service.js';
import type { End } from '../suspension/end-inputs.js';
import { DemandQueries } from './demand.queries.js';
import { DIAGNOSE } from './diagnose-readings.js';
import { FIT } from './fit-demand.js';

/** What the team knows about how hard its tracks hit one end of its bikes. */
export interface TeamDemand {
  readonly evidenceVersion: number;
  readonly fit: DemandFit;
  readonly readings: readonly DemandReading[];
  /** The runs of the readings, one for each. */
  readonly runIds: readonly string[];
}

/** The demand model of a team, fitted again whenever a run or a figure behind its hit height has changed. */
@Injectable()
export class DemandService {
  constructor(
    private readonly queries: DemandQueries,
    private readonly runs: RunsService,
    private readonly computeThread: ComputeThread,
  ) {}

  /** Counts every change of what the demand model reads. */
  evidenceVersion(transaction: Transaction, teamId: string): Promise<number> {
    return this.queries.evidenceVersion(transaction, teamId);
  }

  /** The fit to the newest evidence, from the store or made now. */
  async demand(transaction: Transaction, teamId: string, end: End): Promise<TeamDemand> {
    let evidenceVersion = await this.queries.evidenceVersion(transaction, teamId);
    let fit = await this.current(transaction, teamId, end, evidenceVersion);
    if (!fit) {
      needPlaceToCompute();
      await this.queries.lockFit(transaction, teamId, end);
      evidenceVersion = await this.queries.evidenceVersion(transaction, teamId);
      fit = await this.current(transaction, teamId, end, evidenceVersion);
    }
    const counting = await this.runs.countingReadings(transaction, teamId, end);
    const readings = counting.map(demandReading);
    if (!fit) {
      fit = await this.computeThread.run(FIT, readings);
      const modelVersion = DEMAND_MODEL_VERSION;
      await this.queries.store(transaction, { teamId, end, evidenceVersion, modelVersion, fit });
    }
    return { evidenceVersion, fit, readings, runIds: counting.map(({ runId }) => runId) };
  }

  /** How each reading on a track sits in the fit, by its run. Asks the database nothing: not to be called within a transaction. */
  async diagnosesOnTrack(
    { fit, readings, runIds }: TeamDemand,
    trackId: string,
  ): Promise<ReadonlyMap<string, ReadingDiagnosis>> {
    const asked = readings.flatMap((reading, i) =>
      reading.trackId === trackId ? [{ reading, runId: runIds[i] as string }] : [],
    );
    if (asked.length === 0) return new Map();
    const found = await this.computeThread.run(DIAGNOSE, {
      fit,
      readings: asked.map(({ reading }) => reading),
    });
    return new Map(found.map((diagnosis) => [asked[diagnosis.index]?.runId as string, diagnosis]));
  }

  private async current(
    transaction: Transaction,
    teamId: string,
    end: End,
    evidenceVersion: number,
  ): Promise<DemandFit | undefined> {
    const stored = await this.queries.stored(transaction, teamId, end);
    const isCurrent =
      stored?.evidenceVersion === evidenceVersion && stored.modelVersion === DEMAND_MODEL_VERSION;
    return isCurrent ? stored.fit : undefined;
  }
}

const demandReading = (reading: CountingReading): DemandReading => ({
  riderId: reading.riderId,
  trackId: reading.trackId,
  logHeight: reading.logHeight,
  kind: reading.hitKind,
  readingSd: reading.logSd,
  condition: reading.condition,
});
