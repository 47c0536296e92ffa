export { ENGINE_VERSION } from './engine-version.js';
export type { ChamberState } from './frame/hit-motion.js';
export { forkLeverage, leverageFromTable, type LeverageCurve, type LeverageRow } from './frame/leverage.js';
export { sprungMass, type SprungEnd } from './frame/sprung-end.js';
export { assumedTemperature, pressureAtVenue, standardAtmosphere, type Ambient } from './gas/atmosphere.js';
export { SpringInputError } from './numerics/input-error.js';
export {
  propagateUncertainty,
  type Contribution,
  type UncertainAnswer,
  type UncertainInput,
} from './numerics/propagation.js';
export { bottomingGrid, type GridCell, type GridFill } from './questions/bottoming-grid.js';
export { braking, REFERENCE_BRAKING, type BrakingCase, type BrakingResult } from './questions/braking.js';
export { fitDropTest, type DropLanding, type DropSetUp, type DropTestResult } from './questions/drop-test.js';
export type { DropTestWarning } from './questions/drop-test-checks.js';
export { fastCurve, settledCurve, type ForceCurve, type ForceCurvePoint } from './questions/force-curve.js';
export type { HeightResult } from './questions/height-search.js';
export {
  hitHeight,
  type HitHeight,
  type HitHeightUncertainty,
  type RingReading,
  type SolvedHitHeight,
  type UnsolvedHitHeight,
} from './questions/hit-height.js';
export {
  identifyNegativeVolume,
  type EqualisingProcedure,
  type NegativeVolumeIdentification,
} from './questions/identify-negative-volume.js';
export { identifyVolume, type VolumeIdentification } from './questions/identify-volume.js';
export { landing, type EnergyBalance, type LandingOptions, type LandingResult } from './questions/landing.js';
export { pumpTo, type EnteredLimits, type PumpTo } from './questions/pump-to.js';
export { reboundStep, type ReboundStep } from './questions/rebound-step.js';
export { pressureForSag, sag, type SagResult, type SettledTravel } from './questions/sag.js';
export { sceneInputs, sceneWith, type Scene, type SceneInput } from './questions/scene.js';
export { spacerTrade, type SpacerTrade, type TradeTarget } from './questions/spacer-trade.js';
export { bottomingHeight, suddenLoadTravel, travelForHeight, type TravelResult } from './questions/travel.js';
export { venuePressure, type VenuePressure } from './questions/venue.js';
export type { Measured, PressureRun, VolumeProcedure, VolumeSource } from './questions/volume-model.js';
export { WORK_STEPS, workSteps, type UnitSetting, type WorkStep } from './questions/work-steps.js';
export {
  DEFAULT_THERMAL_TIME,
  type AirSpringUnit,
  type Damper,
  type ThermalTime,
} from './unit/air-spring-unit.js';
export { airSpring, type AirSpring, type SpringFill } from './unit/air-spring.js';
export { chamberPressures, springForce, springStiffness, storedEnergy } from './unit/force.js';
export type { PressureAnswer, UnpressurisedFill } from './unit/pressure-for-force.js';
