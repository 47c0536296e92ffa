import type { AbsolutePascal, GaugePascal } from '@loamledger/units';
import { entry } from '../numerics/entry.js';

/** A value with its standard uncertainty, in the value's unit. */
export interface Measured {
  readonly value: number;
  readonly sd: number;
}

/** Pressures read with the pump attached while the unit is held at several travels, each after settling for 30 s. */
export interface PressureRun {
  readonly spacers: number;
  readonly readings: readonly { readonly travel: number; readonly gaugePressure: GaugePascal }[];
}

/** What was measured to find the volume of a positive chamber. */
export interface VolumeProcedure {
  readonly runs: readonly PressureRun[];
  readonly ambientPressure: AbsolutePascal;
  /** m². */
  readonly boreArea: Measured;
  /** Air in the pump's hose and gauge, m³. */
  readonly hoseVolume: Measured;
  /** m³; does not matter where no run has spacers. */
  readonly spacerVolume: Measured;
  /** Standard uncertainty of the gauge's zero, Pa; Infinity if it was never checked. */
  readonly gaugeZeroSd: number;
  /** Of one gauge reading, Pa. */
  readonly gaugeReadingSd: number;
  /** Of one travel reading, m. */
  readonly travelSd: number;
}

/** What can limit the result. */
export type VolumeSource =
  'gaugeReadings' | 'travelReadings' | 'boreArea' | 'hoseVolume' | 'gaugeZero' | 'spacerVolume';

/** State of the model: logarithms where only ratios matter, so that all entries are of the order of their errors. */
interface VolumeState {
  readonly volume: number;
  readonly area: number;
  readonly hose: number;
  readonly zero: number;
  readonly spacer: number;
  /** Absolute pressure at full extension of every run, Pa. */
  readonly fills: readonly number[];
}

/** Places of the parameters; the pressures of the runs come last. */
const INDEX = { volume: 0, area: 1, hose: 2, zero: 3, spacer: 4, firstFill: 5 };
/** A quantity given without uncertainty counts as known to this part of itself, so that the fit stays whole. */
const SMALLEST_RELATIVE_SD = 1e-9;
/** Steps for derivatives: relative, and relative to the pressure of the air around for the gauge's zero. */
const RELATIVE_STEP = 1e-4;

/**
 * Boyle's law with pump attached: p(s) = P_run·(V + V_h)/(V + V_h − A·s) − p_a + zero, V = V₀ − n·v_s;
 * docs/equations/answers.md#two-readings. As residuals over the parameters ln V₀, ln A, V_h, zero, ln v_s and ln P of each run,
 * those known beforehand with a residual of their own.
 */
export class VolumeModel {
  readonly start: readonly number[];
  readonly steps: readonly number[];
  readonly readingCount: number;
  /** Standard uncertainty of gauge and travel together for each reading, Pa; at the first guess, so that it stays put. */
  private readonly readingSds: readonly number[];
  private readonly known: readonly { index: number; source: VolumeSource; sd: number }[];

  constructor(
    private readonly procedure: VolumeProcedure,
    private readonly guess: number,
  ) {
    const { runs, boreArea, hoseVolume, spacerVolume, gaugeZeroSd, ambientPressure } = procedure;
    this.start = Array.from({ length: INDEX.firstFill + runs.length }, () => 0);
    this.steps = this.start.map(() => RELATIVE_STEP);
    const relative = ({ sd }: Measured, of: number) =>
      of > 0 ? Math.max(sd / of, SMALLEST_RELATIVE_SD) : SMALLEST_RELATIVE_SD;
    this.known = [
      { index: INDEX.area, source: 'boreArea', sd: relative(boreArea, boreArea.value) },
      { index: INDEX.hose, source: 'hoseVolume', sd: relative(hoseVolume, guess) },
      {
        index: INDEX.zero,
        source: 'gaugeZero',
        sd: Math.max(gaugeZeroSd / ambientPressure, SMALLEST_RELATIVE_SD),
      },
      { index: INDEX.spacer, source: 'spacerVolume', sd: relative(spacerVolume, spacerVolume.value) },
    ];
    const state = this.state(this.start);
    this.readingSds = this.readings().map(({ run, fill, travel }) => {
      const { perTravel } = this.predict(state, run, fill, travel);
      return Math.hypot(procedure.gaugeReadingSd, perTravel * procedure.travelSd);
    });
    this.readingCount = this.readingSds.length;
  }

  /** Positive volume without spacers for the parameters of a fit, m³. */
  volume(parameters: readonly number[]): number {
    return this.state(parameters).volume;
  }

  residuals(parameters: readonly number[]): readonly number[] {
    const state = this.state(parameters);
    const readings = this.readings().map(({ run, fill, travel, gaugePressure }, k) => {
      const { absolute } = this.predict(state, run, fill, travel);
      const shown = absolute - this.procedure.ambientPressure + state.zero;
      return (shown - gaugePressure) / entry(this.readingSds, k);
    });
    return [...readings, ...this.known.map(({ index, sd }) => entry(parameters, index) / sd)];
  }

  /** Variance that each source adds to one parameter, from that parameter's gains over all residuals. */
  contributions(gains: readonly number[]): Record<VolumeSource, number> {
    const shares = {
      gaugeReadings: 0,
      travelReadings: 0,
      boreArea: 0,
      hoseVolume: 0,
      gaugeZero: 0,
      spacerVolume: 0,
    };
    this.readingSds.forEach((sd, k) => {
      const variance = entry(gains, k) ** 2;
      const ofGauge = (this.procedure.gaugeReadingSd / sd) ** 2;
      shares.gaugeReadings += variance * ofGauge;
      shares.travelReadings += variance * (1 - ofGauge);
    });
    this.known.forEach(({ source }, i) => {
      shares[source] += entry(gains, this.readingSds.length + i) ** 2;
    });
    return shares;
  }

  private readings(): { run: PressureRun; fill: number; travel: number; gaugePressure: number }[] {
    return this.procedure.runs.flatMap((run, fill) =>
      run.readings.map((reading) => ({ run, fill, ...reading })),
    );
  }

  private state(parameters: readonly number[]): VolumeState {
    const { runs, boreArea, hoseVolume, spacerVolume, ambientPressure } = this.procedure;
    const at = (index: number) => entry(parameters, index);
    return {
      volume: this.guess * Math.exp(at(INDEX.volume)),
      area: boreArea.value * Math.exp(at(INDEX.area)),
      hose: hoseVolume.value + this.guess * at(INDEX.hose),
      zero: ambientPressure * at(INDEX.zero),
      spacer: spacerVolume.value * Math.exp(at(INDEX.spacer)),
      fills: runs.map((run, i) => this.firstFill(run) * Math.exp(at(INDEX.firstFill + i))),
    };
  }

  /** Absolute pressure of a run carried back to full extension by the first guess, Pa. */
  private firstFill(run: PressureRun): number {
    const { ambientPressure, boreArea, hoseVolume, spacerVolume } = this.procedure;
    const { travel, gaugePressure } = entry(run.readings, 0);
    const volume = this.guess - run.spacers * spacerVolume.value + hoseVolume.value;
    return ((gaugePressure + ambientPressure) * (volume - boreArea.value * travel)) / volume;
  }

  /** Absolute pressure at a travel of a run, Pa, and its rise with travel, Pa/m. */
  private predict(
    state: VolumeState,
    run: PressureRun,
    fill: number,
    travel: number,
  ): { absolute: number; perTravel: number } {
    const volume = state.volume - run.spacers * state.spacer + state.hose;
    const left = volume - state.area * travel;
    const absolute = (entry(state.fills, fill) * volume) / left;
    return { absolute, perTravel: (absolute * state.area) / left };
  }
}
