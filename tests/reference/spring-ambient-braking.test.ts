import { describe, expect, it } from 'vitest';
import type {
  SpringInputError} from '@loamledger/spring';
import {
  airSpring,
  braking,
  pressureAtVenue,
  sag,
  springForce,
  venuePressure,
  type AirSpring,
  type BrakingCase,
  type SpringFill,
} from '@loamledger/spring';
import {
  absolutePascal,
  degreesFromRadian,
  gaugePascalFromPsi,
  kelvin,
  psiFromGaugePascal,
  radian,
  radianFromDegrees,
} from '@loamledger/units';
import { endOf, genericUnit, referenceOutputs, unitOf } from './spring-reference.js';

interface AmbientCase {
  case: string;
  p: number;
  F: number[];
  dF: number[];
  sag_mm: number;
}
interface BrakingRow {
  slope_deg: number;
  decel: number;
  p: number;
  n: number;
  Nf: number;
  Nr: number;
  F_axial: number;
  travel_mm: number;
  head_angle_deg: number;
}
interface Reference {
  ambient: {
    p_a_workshop: number;
    p_a_race: number;
    T: [number, number];
    gauge_untouched_psi: number;
    real_gas_gauge_psi: number;
    cases: AmbientCase[];
    x: number[];
    F_workshop: number[];
  };
  braking: {
    params: {
      M: number;
      L: number;
      h_cg: number;
      b: number;
      m_unsprung_front: number;
      front_share: number;
      head_angle_ref: number;
      x_ref_mm: number;
    };
    rows: BrakingRow[];
  };
}

const { ambient, braking: brakes } = referenceOutputs<Reference>('ambient_braking');
const g = genericUnit('fork170');
const unit = unitOf(g);
const end = endOf(g);

describe('the same fork at a venue', () => {
  const [warm, cold] = ambient.T;
  const workshop = { pressure: absolutePascal(ambient.p_a_workshop), temperature: kelvin(warm) };
  const venue = { pressure: absolutePascal(ambient.p_a_race), temperature: kelvin(cold) };
  const fill: SpringFill = {
    gaugePressure: gaugePascalFromPsi(65),
    spacers: 0,
    ambientPressure: workshop.pressure,
    temperature: workshop.temperature,
  };
  const here = airSpring(unit, fill);

  it('shows the reference gauge pressure untouched, within 0.1 % of a real gas (Lemmon et al. 2000)', () => {
    const untouched = psiFromGaugePascal(pressureAtVenue(gaugePascalFromPsi(65), workshop, venue));
    expect(Math.abs(untouched / ambient.gauge_untouched_psi - 1)).toBeLessThan(1e-9);
    expect(Math.abs(untouched / ambient.real_gas_gauge_psi - 1)).toBeLessThan(1e-3);
  });

  it('has the reference forces in the workshop', () => {
    ambient.x.forEach((travel, i) => {
      expect(springForce(here, travel) / (ambient.F_workshop[i] ?? NaN)).toBeCloseTo(1, 9);
    });
  });

  it.each(ambient.cases)('$case: forces over travel and sag', (reference) => {
    const lowerLegs = reference.case.includes('bled') ? 'bled' : 'sealed';
    const { lowerLegPressure } = venuePressure(unit, fill, end, venue, lowerLegs);
    const there = airSpring(unit, {
      gaugePressure: gaugePascalFromPsi(reference.p),
      spacers: 0,
      ambientPressure: venue.pressure,
      temperature: venue.temperature,
      lowerLegPressure,
    });
    ambient.x.forEach((travel, i) => {
      expect(springForce(there, travel) / (reference.F[i] ?? NaN)).toBeCloseTo(1, 9);
    });
    expect(Math.abs(sag(there, end).travel - reference.sag_mm / 1e3)).toBeLessThan(1e-9);
  });

  it.each(['sealed', 'bled'] as const)('%s: the matched pressures restore the force where they say', (lowerLegs) => {
    const answer = venuePressure(unit, fill, end, venue, lowerLegs);
    const forceThere = (gauge: typeof answer.matchedAtSag, travel: number) => {
      if (gauge.status !== 'found') throw new Error(gauge.message);
      const spring = airSpring(unit, {
        gaugePressure: gauge.gaugePressure,
        spacers: 0,
        ambientPressure: venue.pressure,
        temperature: venue.temperature,
        lowerLegPressure: answer.lowerLegPressure,
      });
      return springForce(spring, travel);
    };
    const settled = sag(here, end).travel;
    expect(forceThere(answer.matchedAtSag, settled) / springForce(here, settled)).toBeCloseTo(1, 9);
    expect(forceThere(answer.matchedAtMidStroke, g.S / 2) / springForce(here, g.S / 2)).toBeCloseTo(1, 9);
  });

  it('needs no change where nothing changes', () => {
    const answer = venuePressure(unit, fill, end, workshop, 'sealed');
    expect(psiFromGaugePascal(answer.untouched)).toBeCloseTo(65, 10);
    for (const match of [answer.matchedAtSag, answer.matchedAtMidStroke]) {
      expect(match.status === 'found' && psiFromGaugePascal(match.gaugePressure)).toBeCloseTo(65, 8);
    }
  });
});

describe('braking dive', () => {
  const { params } = brakes;
  const fork = (p: number, n: number): AirSpring =>
    airSpring(unit, {
      gaugePressure: gaugePascalFromPsi(p),
      spacers: n,
      ambientPressure: absolutePascal(g.p_a),
      temperature: kelvin(g.T),
    });
  const brakingCase = (slope: number, deceleration: number): BrakingCase => ({
    totalMass: params.M,
    wheelbase: params.L,
    centreHeight: params.h_cg,
    centreToRear: params.b,
    frontUnsprungMass: params.m_unsprung_front,
    frontBrakeShare: params.front_share,
    headAngle: radianFromDegrees(params.head_angle_ref),
    referenceTravel: params.x_ref_mm / 1e3,
    slope: radianFromDegrees(slope),
    deceleration,
  });

  it.each(brakes.rows)('slope $slope_deg°, $decel m/s², $p psi, $n spacers', (row) => {
    const result = braking(fork(row.p, row.n), brakingCase(row.slope_deg, row.decel));
    if (result.status !== 'settled') throw new Error(result.status);
    expect(Math.abs(result.frontLoad / row.Nf - 1)).toBeLessThan(1e-9);
    expect(Math.abs(result.rearLoad / row.Nr - 1)).toBeLessThan(1e-9);
    // The file's travel is that of an iteration stopped at about 1e-9 of it.
    expect(Math.abs(result.axialLoad / row.F_axial - 1)).toBeLessThan(1e-8);
    expect(Math.abs((result.travel * 1e3) / row.travel_mm - 1)).toBeLessThan(1e-8);
    expect(Math.abs(degreesFromRadian(result.headAngle) / row.head_angle_deg - 1)).toBeLessThan(1e-9);
  });

  it('says when the rear wheel lifts, exactly from the deceleration it names', () => {
    const spring = fork(65, 0);
    const { liftDeceleration } = braking(spring, brakingCase(10, 0));
    expect(braking(spring, brakingCase(10, liftDeceleration - 1e-6)).status).toBe('settled');
    expect(braking(spring, brakingCase(10, liftDeceleration + 1e-6)).status).toBe('rear-wheel-lifts');
  });

  it('dives more on steeper ground, under harder braking, and less with spacers', () => {
    const dive = (slope: number, deceleration: number, n = 0) => {
      const result = braking(fork(65, n), brakingCase(slope, deceleration));
      return result.status === 'settled' ? result.dive : NaN;
    };
    expect(dive(15, 0)).toBeGreaterThan(dive(10, 0));
    expect(dive(10, 2)).toBeGreaterThan(dive(10, 1));
    expect(dive(10, 2, 3)).toBeLessThan(dive(10, 2));
  });

  it.each<[string, Partial<BrakingCase>]>([
    ['wheelbase', { wheelbase: 0 }],
    ['centreToRear', { centreToRear: 1.3 }],
    ['frontBrakeShare', { frontBrakeShare: 1.2 }],
    ['slope', { slope: radian(Math.PI / 2) }],
    ['deceleration', { deceleration: NaN }],
    ['totalMass', { totalMass: 0 }],
  ])('refuses an impossible %s', (argument, change) => {
    expect(() => braking(fork(65, 0), { ...brakingCase(10, 1), ...change })).toThrow(
      expect.objectContaining({ name: 'SpringInputError', argument }) as SpringInputError,
    );
  });
});
