import { createHash } from 'node:crypto';
import { DEMAND_MODEL_VERSION } from '@loamledger/evidence';
import { ENGINE_VERSION } from '@loamledger/spring';
import { gaugePascal, gaugePascalFromPsi } from '@loamledger/units';
import type { Computation } from '../../platform/compute/compute-thread.js';
import type { Bike } from '../bikes/bikes.service.js';
import type { TeamDemand } from '../demand/demand.service.js';
import type { Rider } from '../riders/riders.service.js';
import { fillOf, filledAtOf } from '../setups/setup-fill.js';
import type { Setup } from '../setups/setups.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { assumedInputs } from '../suspension/assumed-inputs.js';
import { ambientAt, endInputs, type End } from '../suspension/end-inputs.js';
import type { Track } from '../tracks/tracks.service.js';
import { endAnswer } from './baseline-answer.js';
import type { BaselineDto } from './baselines.dto.js';
import { venueAnswer, type Venue } from './venue.js';
import { endBaseline, type EndLimits, type EndQuestion } from './end-baseline.js';

/** The records behind a baseline. */
export interface BaselineRecords {
  readonly track: Track;
  readonly venue: Venue;
  readonly bike: Bike;
  readonly rider: Rider;
  readonly fork: SpringUnit;
  readonly shock: SpringUnit | null;
  /** null: the bike has no set-up yet. */
  readonly setup: Setup | null;
  /** Version of the team's evidence that the baseline is to rest on. */
  readonly evidenceVersion: number;
}

/** What the thread is given: the bikes' records and what the team knows of both ends. */
export interface BaselinesInput {
  readonly bikes: readonly BaselineRecords[];
  readonly demand: Readonly<Record<End, TeamDemand>>;
}

export type BaselineAnswer = Pick<BaselineDto, 'venue' | 'fork' | 'shock'>;

/** Changes when the way a baseline is put together changes, so that stored ones are made again. */
const COMPOSITION_VERSION = 2;
/** The engine needs some fill to start from where a bike has none; every candidate replaces it. */
const ANY_PRESSURE_PSI = 60;

/** Hash of everything a baseline depends on: equal fingerprints, equal answers. */
export function fingerprintOf(records: BaselineRecords): string {
  const { track, venue, bike, rider, fork, shock, setup, evidenceVersion } = records;
  const parts = [
    COMPOSITION_VERSION,
    ENGINE_VERSION,
    DEMAND_MODEL_VERSION,
    evidenceVersion,
    ...[track, bike, rider, fork, ...(shock ? [shock] : [])].map(({ id, version }) => `${id}:${version}`),
    setup?.id,
    venue.condition,
    venue.airTemperature,
    venue.stationPressure,
  ];
  return createHash('sha256').update(parts.join('/')).digest('hex').slice(0, 32);
}

/** @public The two ends' answers for each bike. The computing thread finds it by its name: all is plain data. */
export function computeBaselines({ bikes, demand }: BaselinesInput): BaselineAnswer[] {
  return bikes.map((records) => computeBaseline(records, demand));
}

export const BASELINES: Computation<BaselinesInput, BaselineAnswer[]> = {
  module: new URL(import.meta.url),
  name: computeBaselines.name,
};

function computeBaseline(records: BaselineRecords, demand: BaselinesInput['demand']): BaselineAnswer {
  const { track, venue, fork, shock, bike } = records;
  return {
    venue: venueAnswer(track.altitude, venue),
    fork: endAnswer(endBaseline(questionOf('fork', fork, records, demand.fork)), fork.bumperLength),
    shock:
      shock && bike.leverageTable
        ? endAnswer(endBaseline(questionOf('shock', shock, records, demand.shock)), shock.bumperLength)
        : null,
  };
}

function questionOf(end: End, unit: SpringUnit, records: BaselineRecords, demand: TeamDemand): EndQuestion {
  const { track, venue, bike, rider, setup } = records;
  const ambient = ambientAt(track.altitude, venue);
  // Another unit than the one in the set-up was mounted since: what the set-up says is not in it.
  const isInBike = setup !== null && (end === 'fork' ? setup.forkUnitId : setup.shockUnitId) === unit.id;
  const inputs = endInputs(end, {
    unit,
    bike,
    rider,
    fill: isInBike ? fillOf(end, setup) : { pressure: gaugePascalFromPsi(ANY_PRESSURE_PSI), spacers: 0 },
    filledAt: isInBike ? filledAtOf(setup) : null,
    ambient,
  });
  const isFork = end === 'fork';
  return {
    inputs,
    current: isInBike ? { pressure: inputs.fill.gaugePressure, spacers: inputs.fill.spacers } : null,
    limits: limitsOf(unit),
    wishes: {
      sagBand: isFork
        ? { min: rider.forkSagLow, max: rider.forkSagHigh }
        : { min: rider.shockSagLow, max: rider.shockSagHigh },
      reserve: isFork ? rider.forkReserve : rider.shockReserve,
      acceptedRisk: rider.acceptedRisk,
    },
    demand,
    who: { riderId: rider.id, trackId: track.id, condition: venue.condition },
    assumed: assumedInputs(end, { unit, bike, rider }),
  };
}

function limitsOf({ minPressure, maxPressure, maxSpacers }: SpringUnit): EndLimits {
  if (minPressure === null || maxPressure === null || maxSpacers === null) return null;
  return { minPressurePa: gaugePascal(minPressure), maxPressurePa: gaugePascal(maxPressure), maxSpacers };
}
