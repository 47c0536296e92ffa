import {
  diagnoseDemand,
  type DemandFit,
  type DemandReading,
  type ReadingDiagnosis,
} from '@loamledger/evidence';
import type { Computation } from '../../platform/compute/compute-thread.js';

/** A fit, and those of its readings that are asked about. */
export interface AskedReadings {
  readonly fit: DemandFit;
  readonly readings: readonly DemandReading[];
}

/** @public Diagnoses readings of a fit, most surprising first. The computing thread finds it by its name. */
export const diagnose = ({ fit, readings }: AskedReadings): readonly ReadingDiagnosis[] =>
  diagnoseDemand(readings, fit);

export const DIAGNOSE: Computation<AskedReadings, readonly ReadingDiagnosis[]> = {
  module: new URL(import.meta.url),
  name: diagnose.name,
};
