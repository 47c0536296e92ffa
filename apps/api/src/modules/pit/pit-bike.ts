import type { Ambient } from '@loamledger/spring';
import { known } from '../../platform/database/rows-by.js';
import type { Bike } from '../bikes/bikes.service.js';
import type { Rider } from '../riders/riders.service.js';
import { setupAnswer } from '../setups/setup-figures.js';
import { fillOf, unitIdAt } from '../setups/setup-fill.js';
import type { Setup } from '../setups/setups.service.js';
import type { InStock } from '../spacers/spacers.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import type { End } from '../suspension/end-inputs.js';
import type { PitEndDto, PitSpacersDto } from './pit-end.dto.js';
import type { PitBikeDto, PitDecisionDto, PitPlanDto, PitRunDto } from './pit.dto.js';
import type { LastDecision, LastRun, OpenPlan } from './pit.queries.js';
import type { UnitServiceDto } from '../unit-service/unit-service.dto.js';
import type { WaitingWork } from '../work-orders/waiting-work.js';
import { todaysPressure } from './todays-pressure.js';

/** What was read of the whole team. */
export interface Fleet {
  readonly riders: ReadonlyMap<string, Rider>;
  readonly units: ReadonlyMap<string, SpringUnit>;
  /** Of each bike, its last two set-ups, newest first. */
  readonly setups: ReadonlyMap<string, readonly Setup[]>;
  readonly decisions: ReadonlyMap<string, LastDecision>;
  readonly plans: ReadonlyMap<string, readonly OpenPlan[]>;
  readonly runs: ReadonlyMap<string, LastRun>;
  readonly inStock: InStock;
  readonly services: ReadonlyMap<string, UnitServiceDto>;
  readonly work: ReadonlyMap<string, readonly WaitingWork[]>;
  /** Of each unit, the spacers that ordered work is still to put in. */
  readonly orderedSpacers: ReadonlyMap<string, number>;
  /** Of each unit, the most spacers that are to be in it. */
  readonly wantedSpacers: ReadonlyMap<string, number>;
  /** null: no track is meant. */
  readonly air: Ambient | null;
}

/** One bike of the pit, field by field. */
export function pitBike(bike: Bike, fleet: Fleet): PitBikeDto {
  const [setup = null, previous = null] = fleet.setups.get(bike.id) ?? [];
  const decision = fleet.decisions.get(bike.id);
  const run = fleet.runs.get(bike.id);
  return {
    bikeId: bike.id,
    name: bike.name,
    category: bike.category,
    riderId: bike.riderId,
    riderName: fleet.riders.get(bike.riderId)?.name ?? '',
    setup: setup && setupAnswer(setup),
    previousSetup: previous && setupAnswer(previous),
    fork: pitEnd('fork', bike.forkUnitId, bike, setup, fleet),
    shock: bike.shockUnitId === null ? null : pitEnd('shock', bike.shockUnitId, bike, setup, fleet),
    decision: decision ? decisionAnswer(decision) : null,
    plans: (fleet.plans.get(bike.id) ?? []).map(planAnswer),
    work: (fleet.work.get(bike.id) ?? []).map(({ id, done, all }) => ({ id, done, all })),
    lastRun: run ? runAnswer(run) : null,
  };
}

function pitEnd(end: End, unitId: string, bike: Bike, setup: Setup | null, fleet: Fleet): PitEndDto {
  const unit = known(fleet.units, unitId);
  const rider = known(fleet.riders, bike.riderId);
  // Another unit than the one in the set-up was mounted since: what the set-up says is not in it.
  const inIt = setup && unitIdAt(end, setup) === unitId ? fillOf(end, setup).spacers : 0;
  return {
    unitId,
    unitName: unit.name,
    hasLimits: unit.minPressure !== null && unit.maxPressure !== null && unit.maxSpacers !== null,
    today: setup && fleet.air && todaysPressure(end, { unit, bike, rider, setup }, fleet.air),
    spacers: spacersAnswer(
      fleet.inStock(unit),
      Math.max(0, (fleet.wantedSpacers.get(unitId) ?? 0) - inIt) +
        Math.max(0, fleet.orderedSpacers.get(unitId) ?? 0),
    ),
    service: known(fleet.services, unitId).standing,
  };
}

const spacersAnswer = (inStock: number, needed: number): PitSpacersDto => ({
  needed,
  inStock,
  isShort: needed > inStock,
});

const decisionAnswer = (decision: LastDecision): PitDecisionDto => ({
  id: decision.id,
  decidedAt: decision.decidedAt.toISOString(),
  reason: decision.reason,
  toSetupId: decision.toSetupId,
  outcome: decision.outcome,
});

const planAnswer = ({ id, name, riderId, ridden, left }: OpenPlan): PitPlanDto => ({
  id,
  name,
  riderId,
  ridden,
  left,
});

const runAnswer = (run: LastRun): PitRunDto => ({
  id: run.id,
  trackId: run.trackId,
  trackName: run.trackName,
  day: run.day,
  loggedAt: run.loggedAt.toISOString(),
  timeS: run.time,
  isVoid: run.isVoid,
  setupId: run.setupId,
});
