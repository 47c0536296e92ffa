import { evidenceLevel, SURPRISING, type EvidenceLevel, type ReadingDiagnosis } from '@loamledger/evidence';
import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { RidersService } from '../riders/riders.service.js';
import { RunsService, type TrackReading } from '../runs/runs.service.js';
import type { Condition } from '../sessions/conditions.js';
import type { End } from '../suspension/end-inputs.js';
import { TracksService } from '../tracks/tracks.service.js';
import type {
  DemandReadingDto,
  EvidenceDto,
  ExpectedHitDto,
  HitForecastDto,
  TrackDemandDto,
} from './demand.dto.js';
import { DemandService } from './demand.service.js';
import { hitForecast, type HitForecast } from './forecast.js';

/** How hard a track hits: every reading on it, and what is forecast for each rider. */
@Injectable()
export class TrackDemand {
  constructor(
    private readonly database: TeamDatabase,
    private readonly demand: DemandService,
    private readonly tracks: TracksService,
    private readonly riders: RidersService,
    private readonly runs: RunsService,
  ) {}

  async onTrack(scope: TeamScope, trackId: string, end: End, condition: Condition): Promise<TrackDemandDto> {
    const { teamId } = scope;
    const { demand, riders, trackReadings } = await this.database.inTeam(scope, async (transaction) => {
      await this.tracks.require(transaction, teamId, trackId);
      const own = visibleRider(scope);
      return {
        demand: await this.demand.demand(transaction, teamId, end),
        riders: (await this.riders.all(transaction, teamId)).filter(({ id }) => !own || id === own),
        trackReadings: await this.runs.trackReadings(transaction, scope, end, trackId),
      };
    });
    const { fit, readings, evidenceVersion } = demand;
    const diagnoses = await this.demand.diagnosesOnTrack(demand, trackId);
    return {
      trackId,
      end,
      condition,
      readings: trackReadings.map((reading) => readingAnswer(reading, diagnoses.get(reading.runId))),
      riders: riders.map(({ id: riderId }) => ({
        riderId,
        forecast: forecastAnswer(hitForecast(fit, { riderId, trackId, condition })),
        evidence: evidenceAnswer(evidenceLevel(readings, riderId, trackId)),
      })),
      anyRider: forecastAnswer(hitForecast(fit, { trackId, condition })),
      runSd: fit.sds.run.mean,
      trackSd: fit.sds.track.mean,
      riderSd: fit.sds.rider.mean,
      riderOnTrackSd: fit.sds.riderOnTrack.mean,
      riderOnTrackSdSource: fit.riderOnTrackSd,
      message: fit.message,
      modelVersion: fit.modelVersion,
      version: String(evidenceVersion),
    };
  }
}

const readingAnswer = (reading: TrackReading, diagnosis: ReadingDiagnosis | undefined): DemandReadingDto => ({
  runId: reading.runId,
  riderId: reading.riderId,
  bikeId: reading.bikeId,
  day: reading.day,
  condition: reading.condition,
  kind: reading.hitKind,
  heightM: Math.exp(reading.logHeight),
  logSd: reading.logSd,
  voided: reading.voided,
  counts: reading.counts,
  chance: diagnosis?.chance ?? null,
  pull: diagnosis?.pull ?? null,
  surprising: diagnosis !== undefined && diagnosis.chance < SURPRISING,
});

/** The forecast that later runs are held against, as a message. */
export const expectedHitAnswer = ({ logMean, levelSd, runSd }: HitForecast['hit']): ExpectedHitDto => ({
  logMean,
  levelSd,
  runSd,
});

/** A forecast as a message. */
export const forecastAnswer = (forecast: HitForecast): HitForecastDto => ({
  p05M: forecast.p05,
  medianM: forecast.median,
  p95M: forecast.p95,
  hit: expectedHitAnswer(forecast.hit),
});

/** An evidence level as a message. */
export const evidenceAnswer = (evidence: EvidenceLevel): EvidenceDto => ({
  level: evidence.level,
  message: evidence.message,
  lowerBoundOnly: evidence.lowerBoundOnly,
  ...evidence.counts,
});
