import { ENGINE_VERSION, SpringInputError } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { fillOf, filledAtOf } from '../setups/setup-fill.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { ambientAt, endInputs, type End } from '../suspension/end-inputs.js';
import { ringHit } from '../suspension/ring-hit.js';
import type { RingReadingEntity } from './ring-reading.entity.js';
import { RunRecordsReader, type RunRecords } from './run-records.js';
import { RunsQueries } from './runs.queries.js';

type HitColumns = Omit<
  RingReadingEntity,
  'teamId' | 'id' | 'createdAt' | 'runId' | 'end' | 'travelUsed' | 'readingSd'
>;

/** Finds the hit height behind each ring reading, and finds it again when a figure behind it has changed. */
@Injectable()
export class HitHeights {
  constructor(
    private readonly queries: RunsQueries,
    private readonly records: RunRecordsReader,
  ) {}

  /** The hit behind a reading, as columns of its row. */
  columns(
    end: End,
    reading: { travelUsed: number; readingSd: number },
    records: RunRecords,
    unit: SpringUnit,
    find: typeof ringHit = ringHit,
  ): HitColumns {
    const { setup, bike, rider, session, track } = records;
    const inputs = endInputs(end, {
      unit,
      bike,
      rider,
      fill: fillOf(end, setup),
      filledAt: filledAtOf(setup),
      ambient: ambientAt(track.altitude, session),
    });
    const hit = find(inputs, reading.travelUsed, reading.readingSd);
    const versions = [unit.version, bike.version, rider.version, session.version, track.version];
    return {
      hitKind: hit?.hitKind ?? null,
      hitHeight: hit?.hitHeight ?? null,
      hitLower: hit?.hitLower ?? null,
      hitUpper: hit?.hitUpper ?? null,
      logHeight: hit?.logHeight ?? null,
      logSd: hit?.logSd ?? null,
      basis: [ENGINE_VERSION, ...versions].join('/'),
      inputs,
    };
  }

  /**
   * Brings every hit height of the team up to date with the engine and with the figures of units, bikes, riders,
   * sessions and tracks as they are now. Returns how many had to be found again.
   */
  async refresh(transaction: Transaction, teamId: string): Promise<number> {
    const stale = await this.queries.staleReadings(transaction, teamId, ENGINE_VERSION);
    const recordsOf = this.records.within(transaction, teamId);
    for (const reading of stale) {
      const records = await recordsOf(reading);
      const unit = records.units[reading.end];
      if (!unit) continue;
      const columns = this.columns(reading.end, reading, records, unit, whatItStillTells);
      await this.queries.updateHit(transaction, teamId, reading.id, columns);
    }
    return stale.length;
  }
}

/**
 * The same for a reading that was possible when it was entered: figures that were corrected since must not keep a whole
 * team from its demand. A ring beyond the stroke as it is now was at its end; where the figures cannot explain a reading at
 * all, it tells nothing.
 */
const whatItStillTells: typeof ringHit = (inputs, travelUsed, readingSd) => {
  try {
    return ringHit(inputs, Math.min(travelUsed, inputs.unit.stroke), readingSd);
  } catch (error) {
    if (error instanceof SpringInputError) return null;
    throw error;
  }
};
