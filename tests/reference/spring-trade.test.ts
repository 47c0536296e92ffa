import { describe, expect, it } from 'vitest';
import {
  airSpring,
  sag,
  spacerTrade,
  SpringInputError,
  type AirSpringUnit,
  type SpringFill,
  type TradeTarget,
} from '@loamledger/spring';
import { absolutePascal, gaugePascalFromPsi, kelvin, psiFromGaugePascal } from '@loamledger/units';
import { endOf, genericUnit, referenceOutputs, unitOf } from './spring-reference.js';

interface TradeReference {
  variant: string;
  target: string;
  h_m: number;
  p_equal_peak_psi: number[];
  p_equal_mid_psi: number[];
  p_equal_sag20_psi: number[];
}

const g = genericUnit('fork170');
const end = endOf(g);
const base = unitOf(g);
const fill: SpringFill = {
  gaugePressure: gaugePascalFromPsi(65),
  spacers: 0,
  ambientPressure: absolutePascal(g.p_a),
  temperature: kelvin(g.T),
};

/** The variants share the fork's 20 % sag at 65 psi: each has its negative chamber sized for it. */
function withSagOf20Percent(unit: AirSpringUnit): AirSpringUnit {
  let [small, large] = [1e-6, 1e-4];
  for (let i = 0; i < 60; i++) {
    const negativeVolume = (small + large) / 2;
    const { fraction } = sag(airSpring({ ...unit, negativeVolume }, fill), end);
    if (fraction < 0.2) small = negativeVolume;
    else large = negativeVolume;
  }
  return { ...unit, negativeVolume: small };
}

const variants: Record<string, AirSpringUnit> = {
  base,
  'tight chamber (dead 65 mm), 11 mL': {
    ...base,
    positiveVolume: base.boreArea * (g.S + 0.065),
    spacerVolume: 11e-6,
  },
  'loose chamber (dead 100 mm), 8 mL': {
    ...base,
    positiveVolume: base.boreArea * (g.S + 0.1),
    spacerVolume: 8e-6,
  },
  isothermal: { ...base, thermalTime: { positive: 0, negative: 0, lowerLeg: 0 } },
  'no damping': { ...base, damper: { lowSpeed: 0, kneeSpeed: 0.25, highSpeed: 0 } },
  'low casting': {
    ...base,
    lowerLegArea: base.lowerLegArea / 2,
    lowerLegVolume: base.lowerLegVolume / 2,
  },
};

function psi(target: TradeTarget): number {
  if (target.status !== 'found') throw new Error(target.message);
  return psiFromGaugePascal(target.gaugePressure);
}

describe.each(referenceOutputs<TradeReference[]>('equal_travel_pressures'))(
  'spacer trade: $variant, $target',
  (reference) => {
    const variant = variants[reference.variant];
    if (variant === undefined) throw new Error(reference.variant);
    const unit = withSagOf20Percent(variant);

    it.each([0, 1, 2, 3, 4])('%s spacers', (spacers) => {
      const trade = spacerTrade(unit, fill, end, spacers, reference.h_m);
      // The file's landings were computed at a tolerance of their own: at rtol 1e-12 its figures still differ from ours
      // by up to 5.5e-6 psi, so 1e-5 psi is what they can tell.
      expect(Math.abs(psi(trade.peakTravel) - (reference.p_equal_peak_psi[spacers] ?? NaN))).toBeLessThan(1e-5);
      expect(Math.abs(psi(trade.midStroke) - (reference.p_equal_mid_psi[spacers] ?? NaN))).toBeLessThan(1e-6);
      expect(Math.abs(psi(trade.sag) - (reference.p_equal_sag20_psi[spacers] ?? NaN))).toBeLessThan(1e-6);
    });
  },
);

describe('spacer trade', () => {
  it('gives nothing to change for the same count, and takes air out in the order peak, middle, sag for more', () => {
    const same = spacerTrade(base, fill, end, 0, 0.4);
    expect(psi(same.peakTravel)).toBeCloseTo(65, 6);
    expect(psi(same.midStroke)).toBeCloseTo(65, 9);
    expect(psi(same.sag)).toBeCloseTo(65, 6);
    const more = spacerTrade(base, fill, end, 2, 0.4);
    expect(psi(more.peakTravel)).toBeLessThan(psi(more.midStroke));
    expect(psi(more.midStroke)).toBeLessThan(psi(more.sag));
    expect(psi(more.sag)).toBeLessThan(65);
  });

  it('has no peak travel to keep where the hit bottoms, and refuses a count the unit cannot take', () => {
    expect(spacerTrade(base, fill, end, 1, 2).peakTravel.status).toBe('out-of-reach');
    expect(() => spacerTrade(base, fill, end, 6, 0.4)).toThrow(SpringInputError);
  });
});
