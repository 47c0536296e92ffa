import { absolutePascal, gaugePascal, kelvin } from '@loamledger/units';
import { describe, expect, it } from 'vitest';
import { SpringInputError } from '../numerics/input-error.js';
import { DEFAULT_THERMAL_TIME, type AirSpringUnit } from './air-spring-unit.js';
import { airSpring, type SpringFill } from './air-spring.js';
import { springForce } from './force.js';

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
const fill: SpringFill = {
  gaugePressure: gaugePascal(450e3),
  spacers: 1,
  ambientPressure: absolutePascal(95e3),
  temperature: kelvin(293.15),
};

describe('airSpring', () => {
  it('equalises both chambers at the transfer position: there their pressures are the same', () => {
    const spring = airSpring(unit, fill);
    const at = (c: { pressure: number; volume: number; area: number }) =>
      (c.pressure * c.volume) / (c.volume - c.area * unit.transferPosition);
    expect(at(spring.negative) / at(spring.positive)).toBeCloseTo(1, 12);
    expect(spring.positive.pressure).toBe(545e3);
  });

  it('a shock has no lower legs and needs no volume for them', () => {
    const shock: AirSpringUnit = { ...unit, kind: 'shock', lowerLegArea: 0, lowerLegVolume: 0 };
    expect(springForce(airSpring(shock, fill), 0.05)).toBeGreaterThan(0);
  });

  const broken: [string, unknown, Partial<AirSpringUnit>][] = [
    ['unit.kind', 'coil', { kind: 'coil' as 'fork' }],
    ['unit.stroke', 0, { stroke: 0 }],
    ['unit.stroke', NaN, { stroke: NaN }],
    ['unit.boreArea', -1, { boreArea: -1 }],
    ['unit.shaftArea', 9e-4, { shaftArea: 9e-4 }],
    ['unit.positiveVolume', 1e-4, { positiveVolume: 1e-4 }],
    ['unit.positiveVolume', Infinity, { positiveVolume: Infinity }],
    ['unit.spacerVolume', -1e-6, { spacerVolume: -1e-6 }],
    ['unit.maxSpacers', 2.5, { maxSpacers: 2.5 }],
    ['unit.negativeVolume', 0, { negativeVolume: 0 }],
    ['unit.transferPosition', 0.16, { transferPosition: 0.16 }],
    ['unit.transferPosition', -0.001, { transferPosition: -0.001 }],
    ['unit.lowerLegVolume', 3e-4, { lowerLegVolume: 3e-4 }],
    ['unit.lowerLegArea', 2e-3, { kind: 'shock' }],
    ['unit.bumperLength', 0.2, { bumperLength: 0.2 }],
    ['unit.bumperEndForce', -1, { bumperEndForce: -1 }],
    ['unit.damper.kneeSpeed', NaN, { damper: { ...unit.damper, kneeSpeed: NaN } }],
    ['unit.damper.lowSpeed', -5, { damper: { ...unit.damper, lowSpeed: -5 } }],
    ['unit.sealFriction', -1, { sealFriction: -1 }],
    ['unit.thermalTime.negative', -0.1, { thermalTime: { ...DEFAULT_THERMAL_TIME, negative: -0.1 } }],
  ];
  it.each(broken)('refuses %s = %s, naming it', (argument, value, change) => {
    expect(() => airSpring({ ...unit, ...change }, fill)).toThrow(
      expect.objectContaining({ name: 'SpringInputError', argument, value }) as Error,
    );
  });

  const badFills: [string, unknown, Partial<SpringFill>][] = [
    ['fill.gaugePressure', 0, { gaugePressure: gaugePascal(0) }],
    ['fill.gaugePressure', -1e5, { gaugePressure: gaugePascal(-1e5) }],
    ['fill.gaugePressure', 1e9, { gaugePressure: gaugePascal(1e9) }],
    ['fill.gaugePressure', NaN, { gaugePressure: gaugePascal(NaN) }],
    ['fill.spacers', 6, { spacers: 6 }],
    ['fill.spacers', -1, { spacers: -1 }],
    ['fill.spacers', 1.5, { spacers: 1.5 }],
    ['fill.ambientPressure', 0, { ambientPressure: absolutePascal(0) }],
    ['fill.temperature', 20, { temperature: kelvin(20) }],
    ['fill.lowerLegPressure', 0, { lowerLegPressure: absolutePascal(0) }],
  ];
  it.each(badFills)('refuses %s = %s, naming it', (argument, value, change) => {
    expect(() => airSpring(unit, { ...fill, ...change })).toThrow(
      expect.objectContaining({ name: 'SpringInputError', argument, value }) as Error,
    );
  });

  it('refuses spacers that fill the chamber though the unit would take as many', () => {
    const roomless = { ...unit, spacerVolume: 2e-5 };
    expect(() => airSpring(roomless, { ...fill, spacers: 4 })).toThrow(SpringInputError);
  });

  it('says what is allowed in words', () => {
    expect(() => airSpring({ ...unit, stroke: 0 }, fill)).toThrow(
      'unit.stroke = 0 m is not possible; allowed: > 0 and ≤ 0.5',
    );
  });
});
