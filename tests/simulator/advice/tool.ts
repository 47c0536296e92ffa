import { endBaseline } from '@loamledger/api/baselines/end-baseline.js';
import { ringHit } from '@loamledger/api/suspension/ring-hit.js';
import { engineEnd } from '@loamledger/api/suspension/end-inputs.js';
import {
  fitDemand,
  learnPreferences,
  predictDemand,
  predictiveQuantile,
  REFERENCE_CONDITION,
  reservePrior,
  type DemandFit,
  type DemandReading,
} from '@loamledger/evidence';
import { travelForHeight } from '@loamledger/spring';
import { gaugePascalFromPsi, psiFromGaugePascal, type GaugePascal } from '@loamledger/units';
import {
  RING_SD,
  SAG_BAND,
  type Adviser,
  type ForkFigures,
  type LoggedRun,
  type SetUp,
  type TeamRecords,
} from '../contract.js';
import { endInputsOf } from '../fork-end.js';

/** Probability of a bottom-out a run that the riders accept: what the tool assumes where nothing is said. */
const ACCEPTED_RISK = 0.05;
const HARDEST_IN_TWENTY = 0.95;
/** What the tool takes to be wanted where nothing is said and nothing was kept, a share of the stroke. */
const USUAL_RESERVE = 0.06;

/** What the tool says: hit heights, demand model and baseline as the service puts them together, one step at a time. */
export function toolAdviser(records: TeamRecords): Adviser {
  const { riderId, trackId } = records;
  const fork = forkOf(records, riderId);
  const past = records.pastRuns.flatMap((run) => readingOf(records, run));
  const reserve =
    records.saidReserve === null
      ? learnedReserve(records, fitDemand(past))
      : records.saidReserve / fork.unit.stroke;
  const known = new Map<LoggedRun, DemandReading[]>();

  return (runs) => {
    for (const run of runs) if (!known.has(run)) known.set(run, readingOf(records, run));
    const readings = [...past, ...runs.flatMap((run) => known.get(run) ?? [])];
    const current = runs.findLast((run) => run.riderId === riderId)?.setUp ?? records.startSetUp;
    const { choice } = endBaseline({
      endToFill: engineEnd(endInputsOf(fork, current, altitudeOf(records, trackId))),
      stroke: fork.unit.stroke,
      current: {
        pressure: gaugePascalFromPsi(current.pressure),
        spacers: current.spacers,
        setupId: '',
        clicks: { rebound: null, compression: null },
      },
      keptHere: [],
      told: [],
      limits: {
        minPressurePa: gaugePascalFromPsi(fork.minPressure),
        maxPressurePa: gaugePascalFromPsi(fork.maxPressure),
        maxSpacers: fork.maxSpacers,
      },
      wishes: {
        sagBand: { value: SAG_BAND, source: 'usual', own: 0, team: 0 },
        reserve: { value: reserve, source: 'entered', own: 0, team: 0 },
        keptReserve: null,
        acceptedRisk: ACCEPTED_RISK,
      },
      demand: { evidenceVersion: 0, fit: fitDemand(readings), readings, runIds: [] },
      who: { riderId, trackId, condition: REFERENCE_CONDITION },
      assumed: [],
    });
    // A large change is ridden step by step; where nothing is recommended, what is in the fork stays.
    const steps = choice.status === 'recommended' ? choice.steps.map(setUpOf) : [];
    return { next: steps[0] ?? current, best: steps.at(-1) ?? current };
  };
}

const setUpOf = ({ pressurePa, spacers }: { pressurePa: GaugePascal; spacers: number }): SetUp => ({
  pressure: psiFromGaugePascal(pressurePa),
  spacers,
});

/** What the ring of a run says to the demand model; nothing where it says nothing. */
function readingOf(
  records: TeamRecords,
  { riderId, trackId, setUp, travelUsed }: LoggedRun,
): DemandReading[] {
  const inputs = endInputsOf(forkOf(records, riderId), setUp, altitudeOf(records, trackId));
  const hit = ringHit(inputs, travelUsed, RING_SD);
  return hit ? [{ riderId, trackId, kind: hit.hitKind, logHeight: hit.logHeight, readingSd: hit.logSd }] : [];
}

/** The reserve that the rider seems to want, a share of the stroke, from what the team has kept on earlier tracks. */
function learnedReserve({ kept, riderId, ...records }: TeamRecords, fit: DemandFit): number {
  const values = kept.map((decision) => {
    const fork = forkOf(records, decision.riderId);
    const { spring, end } = engineEnd(
      endInputsOf(fork, decision.setUp, altitudeOf(records, decision.trackId)),
    );
    const hit = Math.exp(predictiveQuantile(predictDemand(fit, decision), HARDEST_IN_TWENTY));
    return { riderId: decision.riderId, value: 1 - travelForHeight(spring, end, hit).fraction };
  });
  return learnPreferences(values, reservePrior(USUAL_RESERVE))(riderId).mean;
}

function forkOf({ forks }: Pick<TeamRecords, 'forks'>, riderId: string): ForkFigures {
  const fork = forks.get(riderId);
  if (!fork) throw new Error(`no fork of ${riderId} in the records`);
  return fork;
}

function altitudeOf({ altitudes }: Pick<TeamRecords, 'altitudes'>, trackId: string): number {
  const altitude = altitudes.get(trackId);
  if (altitude === undefined) throw new Error(`no ${trackId} in the records`);
  return altitude;
}
