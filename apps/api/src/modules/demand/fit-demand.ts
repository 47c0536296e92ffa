import { fitDemand, type DemandFit, type DemandReading } from '@loamledger/evidence';
import type { Computation } from '../../platform/compute/compute-thread.js';

/** @public Fits the demand model. The computing thread finds it by its name. */
export const fit = (readings: readonly DemandReading[]): DemandFit => fitDemand(readings);

export const FIT: Computation<readonly DemandReading[], DemandFit> = {
  module: new URL(import.meta.url),
  name: fit.name,
};
