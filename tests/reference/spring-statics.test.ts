import { describe, expect, it } from 'vitest';
import {
  airSpring,
  bottomingHeight,
  chamberPressures,
  fastCurve,
  landing,
  pressureForSag,
  sag,
  settledCurve,
  springForce,
  springStiffness,
  SpringInputError,
  standardAtmosphere,
  suddenLoadTravel,
} from '@loamledger/spring';
import { psiFromGaugePascal } from '@loamledger/units';
import { endOf, fillOf, genericUnit, genericUnits, referenceOutputs, unitOf } from './spring-reference.js';

const ADIABATIC = 1.4;
/** Closed forms: a few roundings in double precision. */
const ROUNDING = 1e-12;

interface GasExample {
  setup: string;
  spacers: number;
  x_m: number;
  p_pos_iso_Pa: number;
  p_pos_adia_Pa: number;
  p_neg_iso_Pa: number;
  p_neg_adia_Pa: number;
  p_cast_iso_Pa: number;
  F_iso_N: number;
  F_adia_N: number;
  k_iso_N_m: number;
}

describe('gas examples (closed form p·Vⁿ = const, independent code)', () => {
  it.each(referenceOutputs<GasExample[]>('gas_examples'))(
    '$setup, $spacers spacers, travel $x_m m',
    (example) => {
      const g = genericUnit(example.setup);
      const spring = airSpring(unitOf(g), fillOf(g, example.spacers));
      const settled = chamberPressures(spring, example.x_m);
      const fast = chamberPressures(spring, example.x_m, ADIABATIC);
      const near = (ours: number, theirs: number, scale: number) =>
        expect(Math.abs(ours - theirs) / scale).toBeLessThan(ROUNDING);
      near(settled.positive, example.p_pos_iso_Pa, example.p_pos_iso_Pa);
      near(settled.negative, example.p_neg_iso_Pa, example.p_neg_iso_Pa);
      near(settled.lowerLeg, example.p_cast_iso_Pa, example.p_cast_iso_Pa);
      near(fast.positive, example.p_pos_adia_Pa, example.p_pos_adia_Pa);
      near(fast.negative, example.p_neg_adia_Pa, example.p_neg_adia_Pa);
      // Forces are differences of chamber forces of some 1000 N, so they round to about 1e-12 of those.
      near(springForce(spring, example.x_m), example.F_iso_N, 1000 + Math.abs(example.F_iso_N));
      const curve = fastCurve(spring, 1001);
      const point = curve.points[Math.round((example.x_m / g.S) * 1000)];
      near(point?.force ?? NaN, example.F_adia_N, 1000 + Math.abs(example.F_adia_N));
      // The file's stiffness is that of the gas alone.
      const depth = Math.max(0, example.x_m - (g.S - g.L_b));
      const gasStiffness = springStiffness(spring, example.x_m) - (2 * g.F_b * depth) / g.L_b ** 2;
      near(gasStiffness, example.k_iso_N_m, springStiffness(spring, example.x_m));
    },
  );
});

describe('generic units', () => {
  // The file gives sag to 1e-9 m.
  it.each(Object.entries(genericUnits))('%s: sag and wheel travel', (_, g) => {
    const spring = airSpring(unitOf(g), fillOf(g, 0));
    const end = endOf(g);
    const result = sag(spring, end);
    expect(result.status).toBe('settled');
    expect(Math.abs(result.travel - g.sag_mm / 1e3)).toBeLessThan(1e-9);
    expect(Math.abs(result.fraction - g.sag_frac)).toBeLessThan(1e-8);
    // Forks: the file counts travel along the axis as wheel travel.
    if (g.A_c === 0) {
      expect(end.leverage.wheelTravel(g.S)).toBeCloseTo(g.wheel_travel_mm / 1e3, 12);
      expect(result.wheelTravel / end.leverage.wheelTravel(g.S)).toBeCloseTo(g.wheel_sag_frac, 8);
    }
  });

  it.each(Object.entries(genericUnits))('%s: pressure for that sag is the pressure it has', (_, g) => {
    const { gaugePressure, ...fill } = fillOf(g, 0);
    const answer = pressureForSag(unitOf(g), fill, endOf(g), g.sag_frac);
    expect(answer.status).toBe('found');
    if (answer.status === 'found') {
      // Sag in the file is good to 1e-9 m, which is 1e-6 psi here.
      expect(Math.abs(psiFromGaugePascal(answer.gaugePressure) - psiFromGaugePascal(gaugePressure))).toBeLessThan(1e-5);
    }
  });
});

interface EdgeCase {
  case: string;
  n_first_invalid?: number;
  F0_N?: number;
  F_S_N?: number;
  x_min_m?: number;
  h_bottom_m?: number;
}

describe('edge cases of the 170 mm fork', () => {
  const g = genericUnit('fork170');
  const unit = unitOf(g);
  const spring = airSpring(unit, fillOf(g, 0));
  const edges = referenceOutputs<EdgeCase[]>('edge_cases');
  const edge = (pick: (e: EdgeCase) => number | undefined): number => {
    const found = edges.map(pick).find((x) => x !== undefined);
    if (found === undefined) throw new Error('no such edge case');
    return found;
  };

  it('spacers fill the chamber from the count named on: refused, one fewer is not', () => {
    const firstInvalid = edge((e) => e.n_first_invalid);
    const roomy = { ...unit, maxSpacers: 20 };
    expect(() => airSpring(roomy, fillOf(g, firstInvalid))).toThrow(SpringInputError);
    expect(() => airSpring(roomy, fillOf(g, firstInvalid - 1))).not.toThrow();
  });

  it('the forces at both ends of the stroke are those between which a load settles', () => {
    expect(springForce(spring, 0)).toBeCloseTo(edge((e) => e.F0_N), 9);
    expect(springForce(spring, g.S)).toBeCloseTo(edge((e) => e.F_S_N), 8);
  });

  it('a load beyond the full-travel force bottoms', () => {
    const heavy = { ...endOf(g), sprungMass: edge((e) => e.F_S_N) / 9.80665 / 0.898794046299167 + 0.01 };
    expect(sag(spring, heavy)).toMatchObject({ status: 'bottomed', travel: g.S, fraction: 1 });
  });

  it('least travel used, by a load put on suddenly: within 1e-7 m', () => {
    const { status, travel } = suddenLoadTravel(spring, endOf(g));
    expect(status).toBe('peak');
    expect(Math.abs(travel - edge((e) => e.x_min_m))).toBeLessThan(1e-7);
  });

  // The stored height is the upper end of a bisection, up to 3e-5 m too high (its own landing bottoms with speed
  // left), so the height is held against landings on both sides of it, and the stored one bounds it from above.
  it('height that just bottoms: a landing 1 µm lower does not, one 1 µm higher does', () => {
    const result = bottomingHeight(spring, endOf(g));
    if (result.status !== 'found') throw new Error(result.status);
    const stored = edge((e) => e.h_bottom_m);
    expect(result.height).toBeLessThan(stored);
    expect(stored - result.height).toBeLessThan(3e-5);
    const options = { relativeTolerance: 1e-11 };
    expect(landing(spring, endOf(g), result.height - 1e-6, options).status).toBe('peak');
    expect(landing(spring, endOf(g), result.height + 1e-6, options).status).toBe('bottomed');
    expect(landing(spring, endOf(g), stored, options).status).toBe('bottomed');
  });

  it('curves run from full extension to the end of the stroke and their energies agree with their forces', () => {
    for (const curve of [settledCurve(spring, 2001), fastCurve(spring, 2001)]) {
      const step = g.S / 2000;
      const simpson = curve.points.reduce(
        (sum, { force }, i) => sum + force * (i === 0 || i === 2000 ? 1 : i % 2 === 1 ? 4 : 2),
        0,
      );
      // Simpson's rule at this step is good to better than 1e-7 here.
      expect((simpson * step) / 3 / curve.energyToFullTravel).toBeCloseTo(1, 6);
      expect(curve.progression).toBeGreaterThan(1);
    }
  });
});

interface AtmospherePoint {
  Z_m: number;
  geometric: { T_K: number; P_Pa: number };
  memory_table_geometric: { T_K: number; P_Pa: number };
}

describe('US Standard Atmosphere 1976', () => {
  it.each(referenceOutputs<AtmospherePoint[]>('atmosphere_us1976'))('$Z_m m', (point) => {
    const air = standardAtmosphere(point.Z_m);
    expect(Math.abs(air.pressure / point.geometric.P_Pa - 1)).toBeLessThan(1e-9);
    expect(Math.abs(air.temperature / point.geometric.T_K - 1)).toBeLessThan(1e-9);
    // Printed table, from memory: rounded to some Pa.
    expect(Math.abs(air.pressure / point.memory_table_geometric.P_Pa - 1)).toBeLessThan(1e-4);
  });
});
