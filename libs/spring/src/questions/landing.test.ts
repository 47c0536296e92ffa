import { absolutePascal, gaugePascal, kelvin, radian } from '@loamledger/units';
import { describe, expect, it } from 'vitest';
import { forkLeverage } from '../frame/leverage.js';
import { sprungMass } from '../frame/sprung-end.js';
import { SpringInputError } from '../numerics/input-error.js';
import { airSpring, type AirSpring } from '../unit/air-spring.js';
import { DEFAULT_THERMAL_TIME, type AirSpringUnit } from '../unit/air-spring-unit.js';
import { landing } from './landing.js';

const unit: AirSpringUnit = {
  kind: 'fork',
  stroke: 0.16,
  boreArea: 9e-4,
  shaftArea: 8e-5,
  positiveVolume: 2.1e-4,
  spacerVolume: 1e-5,
  maxSpacers: 5,
  negativeVolume: 3e-5,
  transferPosition: 0.003,
  lowerLegVolume: 6e-4,
  lowerLegArea: 2e-3,
  bumperLength: 0.008,
  bumperEndForce: 1500,
  damper: { lowSpeed: 600, kneeSpeed: 0.25, highSpeed: 180 },
  sealFriction: 18,
  thermalTime: DEFAULT_THERMAL_TIME,
};
const end = { sprungMass: 37, leverage: forkLeverage(radian(1.12)) };

function springWith(change: Partial<AirSpringUnit>): AirSpring {
  return airSpring(
    { ...unit, ...change },
    {
      gaugePressure: gaugePascal(450e3),
      spacers: 1,
      ambientPressure: absolutePascal(95e3),
      temperature: kelvin(293.15),
    },
  );
}

describe('landing', () => {
  it('from no height at all is a load put on suddenly: it peaks deeper than it would settle', () => {
    const result = landing(
      springWith({ damper: { lowSpeed: 0, kneeSpeed: 1, highSpeed: 0 }, sealFriction: 0 }),
      end,
      0,
    );
    expect(result.status).toBe('peak');
    expect(result.peakTravel).toBeGreaterThan(0.04);
  });

  it('on a spring preloaded by its friction beyond the load does not move', () => {
    const result = landing(springWith({ sealFriction: 5000 }), end, 0);
    expect(result).toMatchObject({ status: 'peak', peakTravel: 0, peakTime: 0, endSpeed: 0 });
  });

  it('works without a bumper, and with one as long as the stroke', () => {
    for (const bumperLength of [0, unit.stroke]) {
      const result = landing(springWith({ bumperLength }), end, 0.3);
      expect(result.status).toBe('peak');
      expect(Math.abs(result.energyBalance.residual / result.energyBalance.input)).toBeLessThan(1e-6);
    }
  });

  it('of an overdamped end ends where it creeps no further', () => {
    const heavyOil = { lowSpeed: 20_000, kneeSpeed: 10, highSpeed: 20_000 };
    const result = landing(springWith({ damper: heavyOil }), end, 0.1);
    expect(result.status).toBe('peak');
    expect(result.peakTravel).toBeLessThan(unit.stroke);
  });

  it('survives any damping that can be entered with a status, never an endless loop', () => {
    const solid = { lowSpeed: 1e9, kneeSpeed: 10, highSpeed: 1e9 };
    const result = landing(springWith({ damper: solid }), end, 0.1);
    expect(Number.isFinite(result.peakTravel)).toBe(true);
  });

  it('with a chamber nearly filled by spacers stops before it is full', () => {
    const result = landing(springWith({ positiveVolume: 1.5401e-4 }), end, 3);
    expect(result.status).toBe('peak');
    expect(result.peakTravel).toBeLessThan(unit.stroke);
  });

  it.each([-0.1, NaN, Infinity, 1000])('refuses a height of %s m', (height) => {
    expect(() => landing(springWith({}), end, height)).toThrow(SpringInputError);
  });

  it.each([0, -5, NaN, Infinity])('refuses a sprung mass of %s kg', (mass) => {
    expect(() => landing(springWith({}), { ...end, sprungMass: mass }, 0.3)).toThrow(SpringInputError);
  });
});

describe('sprungMass', () => {
  it('is the share of rider and bike less what is not sprung', () => {
    expect(sprungMass({ riderMass: 80, bikeMass: 15, loadShare: 0.4, unsprungMass: 3 })).toBeCloseTo(35, 12);
  });

  it('refuses an end that carries nothing', () => {
    const input = { riderMass: 80, bikeMass: 15, loadShare: 0.03, unsprungMass: 3 };
    expect(() => sprungMass(input)).toThrow(SpringInputError);
  });
});
