import type { Cell } from '../../platform/csv/write-table.js';
import type { End } from '../suspension/end-inputs.js';
import type { DecisionDto } from './decisions.dto.js';

/** A column of the export, in snake case with its unit. */
interface DecisionColumn {
  readonly name: string;
  readonly cell: (decision: DecisionDto, nameOf: (id: string | null) => string | null) => Cell;
}

const column = (name: string, cell: DecisionColumn['cell']): DecisionColumn => ({ name, cell });

const ofEnd = (end: End): DecisionColumn[] => [
  column(`${end}_expected_sag_pct`, ({ expected }) => expected?.[end]?.sagPct),
  column(`${end}_expected_median_travel_mm`, ({ expected }) => expected?.[end]?.medianTravelMm),
  column(`${end}_expected_95_travel_mm`, ({ expected }) => expected?.[end]?.travel95Mm),
  column(`${end}_expected_risk_pct`, ({ expected }) => expected?.[end]?.riskPct),
  column(`${end}_readings`, ({ observed }) => observed[end]?.readings),
  column(`${end}_median_travel_mm`, ({ observed }) => observed[end]?.medianTravelMm),
  column(`${end}_most_travel_mm`, ({ observed }) => observed[end]?.mostTravelMm),
  column(`${end}_bottomed_runs`, ({ observed }) => observed[end]?.bottomedRuns),
  column(`${end}_difference_standard_errors`, ({ observed }) => observed[end]?.standardErrors),
  column(`${end}_observed`, ({ observed }) => observed[end]?.sentence),
];

/** Every column of the export, in its order. */
export const DECISION_COLUMNS: readonly DecisionColumn[] = [
  column('decided_at', ({ decidedAt }) => decidedAt),
  column('bike', ({ bikeId }, nameOf) => nameOf(bikeId)),
  column('rider', ({ riderId }, nameOf) => nameOf(riderId)),
  column('track', ({ trackId }, nameOf) => nameOf(trackId)),
  column('change', ({ changesInWords }) => changesInWords),
  column('reason', ({ reason }) => reason),
  column('decided_by', ({ decidedByName }) => decidedByName),
  column('evidence_runs', ({ evidenceRuns }) => evidenceRuns),
  column('baseline_id', ({ baselineId }) => baselineId),
  column('test_plan_id', ({ testPlanId }) => testPlanId),
  column('runs_since', ({ observed }) => observed.runs),
  column('void_runs_since', ({ observed }) => observed.voided),
  ...ofEnd('fork'),
  ...ofEnd('shock'),
  column('outcome', ({ outcome }) => outcome ?? 'open'),
  column('outcome_note', ({ outcomeNote }) => outcomeNote),
  column('outcome_at', ({ outcomeAt }) => outcomeAt),
  column('decision_id', ({ id }) => id),
];
