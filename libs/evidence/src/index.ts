export { EvidenceInputError } from './errors.js';
export { DEFAULT_DEMAND_PRIORS, DEMAND_MODEL_VERSION } from './demand/reading.js';
export type { DemandPriors, DemandReading, FixedSds, ReadingKind } from './demand/reading.js';
export { fitDemand } from './demand/fit.js';
export type { DemandFit, DemandFitOptions, LevelSummary } from './demand/fit.js';
export type { DemandComponent } from './demand/component.js';
export type { Summary } from './demand/mixture.js';
export { exceedance, predictDemand, predictiveQuantile } from './demand/predict.js';
export type { PredictiveDistribution } from './demand/predict.js';
