export { EvidenceInputError } from './errors.js';
export {
  CONDITION_SD,
  DEFAULT_DEMAND_PRIORS,
  DEMAND_MODEL_VERSION,
  REFERENCE_CONDITION,
} from './demand/reading.js';
export type { DemandPriors, DemandReading, FixedSds, ReadingKind } from './demand/reading.js';
export { fitDemand } from './demand/fit.js';
export type { DemandFit, DemandFitOptions, LevelSummary } from './demand/fit.js';
export type { DemandComponent } from './demand/component.js';
export type { Summary } from './demand/mixture.js';
export { exceedance, predictDemand, predictiveQuantile } from './demand/predict.js';
export type { PredictiveDistribution } from './demand/predict.js';
export { evidenceLevel } from './demand/evidence-level.js';
export type { EvidenceLevel, EvidenceLevelName } from './demand/evidence-level.js';
export { chooseBaseline } from './baseline/choose.js';
export type { BaselineChoice, BaselineCounts } from './baseline/choose.js';
export type {
  BaselineCandidate,
  BaselineRequest,
  EvaluatedCandidate,
  UnitLimits,
} from './baseline/candidate.js';
export type { BaselineAlternative } from './baseline/alternatives.js';
export type { DemandOnSetUp } from './baseline/demands.js';
export { nearestToFaster } from './baseline/towards-faster.js';
export type { SetUpStep } from './baseline/steps.js';
export { makeTestPlan } from './plan/test-plan.js';
export type { PlannedRun, TestPlan } from './plan/test-plan.js';
export { replanRest } from './plan/replan-rest.js';
export type { RiddenRun, RiderProgress } from './plan/replan-rest.js';
export type { RunScatter, TestPlanRequest } from './plan/plan-request.js';
export type { PlanStatement } from './plan/plan-statement.js';
export { scoreOrder, scoreRuns } from './plan/order-score.js';
export type { OrderScore } from './plan/order-score.js';
export type { DesignRun, OrderTrend } from './linear/run-design.js';
export { compareSetUps } from './compare/compare-set-ups.js';
export type { Comparison } from './compare/compare-set-ups.js';
export type { ArmComparison } from './compare/arm-comparison.js';
export type { VoidCount } from './compare/void-count.js';
export type { ComparisonRequest, ComparisonRun } from './compare/comparison-request.js';
export type { ModeratedVariance, SessionVariance } from './compare/moderated-variance.js';
export { pooledScatter, sessionVariances } from './compare/session-scatter.js';
export type { RunsStillNeeded } from './compare/runs-needed.js';
export type { Verdict } from './compare/verdict.js';
export { withVoidsCounted } from './compare/with-voids.js';
export { compareFeel } from './compare/compare-feel.js';
export type { FeelComparison } from './compare/compare-feel.js';
export type { RatingComparison } from './compare/ratings.js';
export { diagnoseDemand, SURPRISING } from './demand/diagnostics.js';
export type { ReadingDiagnosis } from './demand/diagnostics.js';
export { learnPreferences, preferredSagBand, reservePrior, sagPrior } from './baseline/preference.js';
export type { KeptValue, Preference } from './baseline/preference.js';
export { expectedHighHitInterval, highHitInterval } from './demand/next-runs.js';
export type { HitInterval, NextRuns } from './demand/next-runs.js';
export { addReading } from './demand/add-reading.js';
export type { AddedReading } from './demand/add-reading.js';
export type { RunOf } from './demand/run-unknowns.js';
export { expectedHit } from './outcome/expected-hit.js';
export type { ExpectedHit } from './outcome/expected-hit.js';
export { observedLevel } from './outcome/observed-level.js';
export type { LevelDifference, ObservedHit } from './outcome/observed-level.js';
export { bottomOutTails } from './outcome/bottom-outs.js';
export { judgeOutcome } from './outcome/judge-outcome.js';
export type { JudgedOutcome, OutcomeVerdict } from './outcome/judge-outcome.js';
export { compareSections } from './compare/compare-sections.js';
export type { SectionComparison } from './compare/compare-sections.js';
export { gateLength } from './timing/gate-plane.js';
export type { Gate, Place } from './timing/gate-plane.js';
export type { Fix } from './timing/crossings.js';
export { GATE_LENGTH, runsBetween } from './timing/runs-between.js';
export type { TimedRun } from './timing/runs-between.js';
