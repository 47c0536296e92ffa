import { describe, expect, it } from 'vitest';
import {
  identifyNegativeVolume,
  identifyVolume,
  SpringInputError,
  type VolumeIdentification,
  type VolumeProcedure,
} from '@loamledger/spring';
import {
  absolutePascal,
  gaugePascal,
  gaugePascalFromPsi,
  PASCAL_PER_PSI,
} from '@loamledger/units';
import { genericUnit, normals, referenceOutputs } from './spring-reference.js';

interface Identification {
  procedure: string;
  sd_V0_pct: number;
  corr_V0_A: number;
}
interface ChargeShare {
  p1_psi: number;
  p2_psi: number;
  psi_per_mL: number;
  sd_Vn_mL_single: number;
}
const reference = referenceOutputs<{ identification: Identification[]; charge_share: ChargeShare }>('inverse_problems');

const g = genericUnit('fork170');
const AMBIENT = 101_325;
const FIVE_TRAVELS = [0, 0.04, 0.08, 0.12, 0.15];
const TWO_TRAVELS = [0, 0.15];

interface Scenario {
  psi: number;
  travels?: number[];
  repeats?: number;
  spacers?: number[];
  areaSd?: number;
  hose?: { value: number; sd: number };
  zeroPsi?: number;
  readingPsi?: number;
}

/** Exact readings of the 170 mm fork with a pump attached; uncertainties as the reference file has them. */
function procedure(scenario: Scenario, noise: () => number = () => 0): VolumeProcedure {
  const { psi, travels = FIVE_TRAVELS, repeats = 1, spacers = [0], areaSd = 0.005 } = scenario;
  const { hose = { value: 6e-6, sd: 1.5e-6 }, zeroPsi = 0.3, readingPsi = 1 } = scenario;
  const gaugeReadingSd = readingPsi * PASCAL_PER_PSI;
  const runs = spacers.flatMap((count) =>
    Array.from({ length: repeats }, () => ({
      spacers: count,
      readings: travels.map((travel) => {
        const volume = g.Vp0 - count * g.v_s + hose.value;
        const pressure = ((psi * PASCAL_PER_PSI + AMBIENT) * volume) / (volume - g.A * travel) - AMBIENT;
        return { travel, gaugePressure: gaugePascal(pressure + noise() * gaugeReadingSd) };
      }),
    })),
  );
  return {
    runs,
    ambientPressure: absolutePascal(AMBIENT),
    boreArea: { value: g.A, sd: areaSd * g.A },
    hoseVolume: hose,
    spacerVolume: { value: g.v_s, sd: 0.02 * g.v_s },
    gaugeZeroSd: zeroPsi * PASCAL_PER_PSI,
    gaugeReadingSd,
    travelSd: 0.001,
  };
}

function relativeSd(result: VolumeIdentification): number {
  return result.status === 'identified' ? result.sd / result.positiveVolume : (result.relativeSd ?? NaN);
}

describe('volume of a positive chamber from readings with the pump attached', () => {
  // The file's covariances are those of the linearised model; differences of ours are numerical.
  it.each<[number, Scenario]>([
    [0, { psi: 60, zeroPsi: Infinity }],
    [1, { psi: 60 }],
    [2, { psi: 20 }],
    [3, { psi: 20, repeats: 3 }],
    [4, { psi: 20, travels: TWO_TRAVELS, repeats: 5 }],
    [5, { psi: 60, travels: TWO_TRAVELS, repeats: 3 }],
    [6, { psi: 60, spacers: [0, 5], areaSd: Infinity }],
    [7, { psi: 60, spacers: [0, 5], areaSd: Infinity, repeats: 3 }],
    [8, { psi: 60, spacers: [0, 5] }],
    [9, { psi: 0 }],
    [10, { psi: 60, hose: { value: 15e-6, sd: 5e-6 }, repeats: 3 }],
    [11, { psi: 60, readingPsi: 0.3 }],
  ])('case %s of the file has its standard uncertainty within 0.5 %% of it', (index, scenario) => {
    const expected = reference.identification[index];
    if (expected === undefined) throw new Error('no such case');
    const sd = 100 * relativeSd(identifyVolume(procedure(scenario)));
    expect(Math.abs(sd / expected.sd_V0_pct - 1)).toBeLessThan(0.005);
  });

  it('returns the true volume from exact readings, and names what limits it', () => {
    const result = identifyVolume(procedure({ psi: 60, travels: TWO_TRAVELS, repeats: 3 }));
    if (result.status !== 'identified') throw new Error(result.message);
    expect(Math.abs(result.positiveVolume / g.Vp0 - 1)).toBeLessThan(1e-6);
    expect(result.scatter).toBeLessThan(1e-3);
    expect(Object.values(result.shares).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    // The file's correlation of volume and bore is the square root of the bore's share.
    const correlation = reference.identification[5]?.corr_V0_A ?? NaN;
    expect(Math.sqrt(result.shares.boreArea)).toBeCloseTo(correlation, 3);
    const worseHose = identifyVolume(procedure({ psi: 60, hose: { value: 15e-6, sd: 5e-6 }, repeats: 3 }));
    expect(worseHose.status === 'identified' && worseHose.limitedBy).toBe('hoseVolume');
  });

  it('refuses what the data cannot tell: unknown zero, no pressure at the start, bore unknown', () => {
    for (const scenario of [
      { psi: 60, zeroPsi: Infinity },
      { psi: 0 },
      { psi: 60, spacers: [0, 5], areaSd: Infinity },
    ]) {
      expect(identifyVolume(procedure(scenario))).toMatchObject({ status: 'refused', reason: 'too-uncertain' });
    }
    expect(identifyVolume(procedure({ psi: 60, areaSd: Infinity })).status).toBe('refused');
    expect(identifyVolume(procedure({ psi: 60, travels: [0.1] }))).toMatchObject({ reason: 'too-few-travels' });
    expect(identifyVolume(procedure({ psi: 60, travels: [0, 0.005] }))).toMatchObject({ reason: 'no-pressure-rise' });
  });

  it('has a standard uncertainty that covers: 68 % of noisy procedures lie within it', () => {
    const random = normals(7);
    const count = 400;
    let inside = 0;
    for (let i = 0; i < count; i++) {
      // Only the readings are noisy here, so only their share of the variance counts.
      const result = identifyVolume(procedure({ psi: 60, travels: TWO_TRAVELS, repeats: 3 }, random));
      if (result.status !== 'identified') continue;
      const ofReadings = result.sd * Math.sqrt(result.shares.gaugeReadings);
      if (Math.abs(result.positiveVolume - g.Vp0) < ofReadings / Math.max(1, result.scatter)) inside += 1;
    }
    // Binomial standard deviation at 400 draws: 2.3 %.
    expect(inside / count).toBeGreaterThan(0.683 - 0.08);
    expect(inside / count).toBeLessThan(0.683 + 0.08);
  });

  it('says when the readings scatter more than was entered for them', () => {
    const random = normals(3);
    const wild = procedure({ psi: 60, repeats: 3 }, () => 5 * random());
    const result = identifyVolume(wild);
    if (result.status === 'identified') expect(result.scatter).toBeGreaterThan(2);
    else expect(result.reason).toBe('too-uncertain');
  });

  it('refuses readings that cannot be', () => {
    const base = procedure({ psi: 60 });
    expect(() => identifyVolume({ ...base, runs: [] })).toThrow(SpringInputError);
    expect(() => identifyVolume({ ...base, gaugeReadingSd: 0 })).toThrow(SpringInputError);
    expect(() => identifyVolume({ ...base, boreArea: { value: NaN, sd: 0 } })).toThrow(SpringInputError);
  });
});

describe('volume of a negative chamber from the pressure drop when it fills', () => {
  const share = reference.charge_share;
  const equalising = (repeats: number, after = gaugePascalFromPsi(share.p2_psi)) => ({
    repeats: Array.from({ length: repeats }, () => ({ before: gaugePascalFromPsi(share.p1_psi), after })),
    ambientPressure: absolutePascal(AMBIENT),
    positiveVolume: { value: g.Vp0, sd: 0 },
    hoseVolume: { value: 6e-6, sd: 0 },
    boreArea: g.A,
    shaftArea: g.A_shaft,
    transferPosition: g.x_t,
    gaugeReadingSd: PASCAL_PER_PSI,
  });

  it('finds the chamber of the reference from its two pressures', () => {
    const result = identifyNegativeVolume(equalising(1));
    if (result.status !== 'identified') throw new Error(result.message);
    expect(Math.abs(result.negativeVolume / g.Vn0 - 1)).toBeLessThan(1e-9);
  });

  // The file's 4.95 mL divides √2 psi by a slope that holds the air in the empty chamber fixed; that air grows with the
  // chamber, and the two readings do not weigh the same, which leaves 5.75 mL for one try and 2.9 mL for four.
  it('has a standard uncertainty a sixth above that of the file, halved by four tries', () => {
    const result = identifyNegativeVolume(equalising(1));
    const repeated = identifyNegativeVolume(equalising(4));
    if (result.status !== 'identified' || repeated.status !== 'identified') throw new Error('refused');
    expect((result.sd * 1e6) / share.sd_Vn_mL_single).toBeCloseTo(1.161, 3);
    expect(result.sd / repeated.sd).toBeCloseTo(2, 3);
  });

  it('refuses when the pressure did not drop, and when it drops so little that the chamber drowns in the errors', () => {
    expect(identifyNegativeVolume(equalising(4, gaugePascalFromPsi(71)))).toMatchObject({ reason: 'no-pressure-drop' });
    expect(identifyNegativeVolume(equalising(1, gaugePascalFromPsi(68)))).toMatchObject({ reason: 'too-uncertain' });
  });
});
