import { createHash } from 'node:crypto';
import { DEMAND_MODEL_VERSION } from '@loamledger/evidence';
import { ENGINE_VERSION } from '@loamledger/spring';
import { gaugePascal, gaugePascalFromPsi, millimetresFromMetres } from '@loamledger/units';
import type { Computation } from '../../platform/compute/compute-thread.js';
import type { Bike } from '../bikes/bikes.service.js';
import type { ClosedPlan } from '../comparisons/closed-plans.js';
import type { TeamDemand } from '../demand/demand.service.js';
import type { Rider } from '../riders/riders.service.js';
import { fillOf, filledAtOf, unitIdAt } from '../setups/setup-fill.js';
import type { Setup } from '../setups/setups.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { assumedInputs, type AssumedInput } from '../suspension/assumed-inputs.js';
import { ASSUMED_CENTRE_HEIGHT } from '../suspension/braking-figures.js';
import { ambientAt, endInputs, type End, type EndFill } from '../suspension/end-inputs.js';
import type { Track } from '../tracks/tracks.service.js';
import { endAnswer } from './baseline-answer.js';
import type { BaselineDto } from './baselines.dto.js';
import { venueAnswer, type Venue } from './venue.js';
import { toFill } from './end-candidates.js';
import { clicksOf, keptEnds, type KeptEnd, type KeptRecords } from './kept-set-ups.js';
import { learnWishes, wishesOf, type LearnedWishes } from './wishes.js';
import { timeVerdicts, type TimeVerdict } from './time-evidence.js';
import { endBaseline, type EndLimits, type EndQuestion, type ToldApart } from './end-baseline.js';

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
  readonly team: TeamRecords;
}

/** What is the same for every bike of a team on a track. */
export interface TeamRecords {
  /** Decisions whose set-ups were kept. */
  readonly kept: readonly KeptRecords[];
  /** Plans on the track whose verdicts stand. */
  readonly closedPlanIds: readonly string[];
  /** Where plans are closed: their verdicts lean on the scatter of the team's other runs. */
  readonly newestRunId: string | null;
}

/** What the thread is given: the bikes' records and what the team knows of both ends. */
export interface BaselinesInput {
  readonly bikes: readonly BaselineRecords[];
  readonly demand: Readonly<Record<End, TeamDemand>>;
  readonly plans: readonly ClosedPlan[];
  /** The set-ups of their arms. */
  readonly planSetups: ReadonlyMap<string, Setup>;
}

/** What is the same for all bikes of a team at one end. */
interface TeamEnd {
  readonly demand: TeamDemand;
  readonly kept: readonly KeptEnd[];
  readonly learned: LearnedWishes;
  readonly verdicts: readonly TimeVerdict[];
  readonly planSetups: ReadonlyMap<string, Setup>;
}

export type BaselineAnswer = Pick<BaselineDto, 'venue' | 'fork' | 'shock'>;

/** Changes when the way a baseline is put together changes, so that stored ones are made again. */
const COMPOSITION_VERSION = 3;
/** The engine needs some fill to start from where a bike has none; every candidate replaces it. */
const ANY_PRESSURE_PSI = 60;

/** Hash of everything a baseline depends on: equal fingerprints, equal answers. */
export function fingerprintOf(records: BaselineRecords): string {
  const { track, venue, bike, rider, fork, shock, setup, evidenceVersion, team } = records;
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
    ...team.kept.map(({ decisionId }) => decisionId),
    ...team.closedPlanIds,
    team.newestRunId,
  ];
  return createHash('sha256').update(parts.join('/')).digest('hex').slice(0, 32);
}

/** @public The two ends' answers for each bike. The computing thread finds it by its name: all is plain data. */
export function computeBaselines({ bikes, demand, plans, planSetups }: BaselinesInput): BaselineAnswer[] {
  const verdicts = timeVerdicts(plans);
  const kept = bikes[0]?.team.kept ?? [];
  const teamEnd = (end: End): TeamEnd => {
    const keptHere = keptEnds(end, kept, demand[end]);
    return { demand: demand[end], kept: keptHere, learned: learnWishes(end, keptHere), verdicts, planSetups };
  };
  const team = { fork: teamEnd('fork'), shock: teamEnd('shock') };
  return bikes.map((records) => computeBaseline(records, team));
}

export const BASELINES: Computation<BaselinesInput, BaselineAnswer[]> = {
  module: new URL(import.meta.url),
  name: computeBaselines.name,
};

function computeBaseline(records: BaselineRecords, team: Readonly<Record<End, TeamEnd>>): BaselineAnswer {
  const { track, venue, fork, shock, bike } = records;
  return {
    venue: venueAnswer(track.altitude, venue),
    fork: endAnswer(endBaseline(questionOf('fork', fork, records, team.fork)), fork.bumperLength),
    shock:
      shock && bike.leverageTable
        ? endAnswer(endBaseline(questionOf('shock', shock, records, team.shock)), shock.bumperLength)
        : null,
  };
}

function questionOf(end: End, unit: SpringUnit, records: BaselineRecords, team: TeamEnd): EndQuestion {
  const { track, venue, bike, rider, setup } = records;
  const ambient = ambientAt(track.altitude, venue);
  // Another unit than the one in the set-up was mounted since: what the set-up says is not in it.
  const isInBike = setup !== null && unitIdAt(end, setup) === unit.id;
  const inputs = endInputs(end, {
    unit,
    bike,
    rider,
    fill: isInBike ? fillOf(end, setup) : { pressure: gaugePascalFromPsi(ANY_PRESSURE_PSI), spacers: 0 },
    filledAt: isInBike ? filledAtOf(setup) : null,
    ambient,
  });
  const fillHere = (other: Setup): EndFill | null => {
    if (unitIdAt(end, other) !== unit.id) return null;
    const filled = { unit, bike, rider, fill: fillOf(end, other), filledAt: filledAtOf(other), ambient };
    const { gaugePressure, spacers } = endInputs(end, filled).fill;
    return { pressure: gaugePressure, spacers };
  };
  return {
    endToFill: toFill(end, inputs, bike, rider),
    stroke: unit.stroke,
    current: isInBike
      ? {
          pressure: inputs.fill.gaugePressure,
          spacers: inputs.fill.spacers,
          setupId: setup.id,
          clicks: clicksOf(end, setup),
        }
      : null,
    keptHere: team.kept.filter(({ bikeId, unitId }) => bikeId === bike.id && unitId === unit.id),
    limits: limitsOf(unit),
    told: toldAtEnd(team, bike.id, fillHere),
    wishes: wishesOf(end, rider, team.learned),
    demand: team.demand,
    who: { riderId: rider.id, trackId: track.id, condition: venue.condition },
    assumed: [...assumedInputs(end, { unit, bike, rider }), ...assumedForBraking(end, bike)],
  };
}

/** What the dive of a fork assumes beside the rest. */
const assumedForBraking = (end: End, bike: Bike): AssumedInput[] =>
  end === 'fork' && bike.centreOfMassHeight === null
    ? [
        {
          of: 'bike',
          id: bike.id,
          field: 'centreOfMassHeightMm',
          value: millimetresFromMetres(ASSUMED_CENTRE_HEIGHT),
        },
      ]
    : [];

/** What plans have told apart of this end: verdicts between set-ups that fill it differently. */
function toldAtEnd(
  { verdicts, planSetups }: TeamEnd,
  bikeId: string,
  fillHere: (setup: Setup) => EndFill | null,
): ToldApart[] {
  return verdicts
    .filter((verdict) => verdict.bikeId === bikeId)
    .flatMap((verdict) => {
      const [faster, slower] = [verdict.fasterSetupId, verdict.slowerSetupId].map((id) => {
        const setup = planSetups.get(id);
        return setup ? fillHere(setup) : null;
      });
      if (!faster || !slower) return [];
      const isAlike = faster.pressure === slower.pressure && faster.spacers === slower.spacers;
      return isAlike ? [] : [{ verdict, faster, slower }];
    });
}

function limitsOf({ minPressure, maxPressure, maxSpacers }: SpringUnit): EndLimits {
  if (minPressure === null || maxPressure === null || maxSpacers === null) return null;
  return { minPressurePa: gaugePascal(minPressure), maxPressurePa: gaugePascal(maxPressure), maxSpacers };
}
