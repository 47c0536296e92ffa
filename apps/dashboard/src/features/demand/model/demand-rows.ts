import { formatHeight } from '../../../shared/format/numbers.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Baseline } from '../../../shared/http/reads/baselines.js';
import type { DemandReading, DemandRow } from '../../../shared/ui/demand-strip/scale.js';
import type { TrackDemand } from '../api/demand.js';
import { texts } from '../texts.js';

interface Names {
  readonly riderName: (id: string) => string;
  readonly bikeName: (id: string) => string;
}

type Reading = TrackDemand['readings'][number];

const KIND = { exact: 'exact', 'at-least': 'atLeast', 'at-most': 'atMost' } as const;

function readingLabel(reading: Reading, names: Names): string {
  const plain = texts.reading(
    formatDay(reading.day),
    names.bikeName(reading.bikeId),
    formatHeight(reading.heightM),
  );
  const bounded = { exact: plain, 'at-least': texts.atLeast(plain), 'at-most': texts.atMost(plain) }[
    reading.kind
  ];
  const counted = reading.counts ? texts.stillCounts : texts.doesNotCount;
  const whole = reading.voided ? `${bounded} (${texts.void}, ${counted})` : bounded;
  return reading.surprising ? texts.surprising(whole) : whole;
}

const placed = (reading: Reading, names: Names): DemandReading => ({
  id: reading.runId,
  heightM: reading.heightM,
  kind: KIND[reading.kind],
  voided: reading.voided,
  label: readingLabel(reading, names),
  standing:
    reading.chance === null
      ? null
      : { chance: reading.chance, pull: reading.pull, surprising: reading.surprising },
});

const band = ({ p05M, medianM, p95M }: TrackDemand['anyRider']) => ({ lowM: p05M, medianM, highM: p95M });

/** The hits at which this rider's bikes bottom out as they are set up now. */
function bottomings(riderId: string, end: TrackDemand['end'], baselines: readonly Baseline[], names: Names) {
  return baselines
    .filter((baseline) => baseline.riderId === riderId)
    .flatMap((baseline) => {
      const heightM = baseline[end]?.current?.bottomingHeightM ?? null;
      if (heightM === null) return [];
      return [{ heightM, label: texts.bottoms(names.bikeName(baseline.bikeId), formatHeight(heightM)) }];
    });
}

/** A row of the demand strip for each rider, and one for a rider of whom nothing is known. */
export function demandRows(demand: TrackDemand, baselines: readonly Baseline[], names: Names): DemandRow[] {
  const riders = demand.riders.map(({ riderId, forecast }) => ({
    key: riderId,
    label: names.riderName(riderId),
    readings: demand.readings
      .filter((reading) => reading.riderId === riderId)
      .map((reading) => placed(reading, names)),
    predictive: band(forecast),
    bottomsAt: bottomings(riderId, demand.end, baselines, names),
  }));
  const anyone = {
    key: 'anyone',
    label: texts.anyRider,
    readings: [],
    predictive: band(demand.anyRider),
    bottomsAt: [],
  };
  return [...riders, anyone];
}
