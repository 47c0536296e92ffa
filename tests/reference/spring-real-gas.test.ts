import { describe, expect, it } from 'vitest';
import { airSpring, chamberPressures } from '@loamledger/spring';
import { absolutePascal, gaugePascalFromPsi, kelvin } from '@loamledger/units';
import { genericUnit, referenceOutputs, unitOf } from './spring-reference.js';

const table = referenceOutputs<{ T_C: number; p_bar: number; Z: number }[]>('air_compressibility');
const ROOM = table.filter((row) => row.T_C === 21);

/** Compressibility of dry air at 21 °C by straight lines between the rows, the last line carried on. */
function compressibility(pascal: number): number {
  const bar = pascal / 1e5;
  const upper = Math.max(1, ROOM.findIndex((row) => row.p_bar >= bar));
  const i = bar > 30 ? ROOM.length - 1 : upper;
  const [a, b] = [ROOM[i - 1], ROOM[i]];
  if (a === undefined || b === undefined) throw new Error('table too short');
  return a.Z + ((b.Z - a.Z) * (bar - a.p_bar)) / (b.p_bar - a.p_bar);
}

/** Settled pressure at 95 % travel: real gas over ideal gas, by iteration of p = p₀·(V₀/V)·Z(p)/Z(p₀). */
function realOverIdeal(name: string): number {
  const g = genericUnit(name);
  const spring = airSpring(unitOf(g), {
    gaugePressure: gaugePascalFromPsi(g.p_psi),
    spacers: 0,
    ambientPressure: absolutePascal(g.p_a),
    temperature: kelvin(g.T),
  });
  const ideal = chamberPressures(spring, 0.95 * g.S).positive;
  const start = compressibility(spring.positive.pressure);
  let real = ideal;
  for (let i = 0; i < 20; i++) real = (ideal * compressibility(real)) / start;
  return real / ideal;
}

describe('ideal gas against the equation of state of dry air (Lemmon et al. 2000)', () => {
  it('is right to 0.4 % at 95 % travel of a fork and to 0.6 % of a shock', () => {
    expect(Math.abs(realOverIdeal('fork170') - 1)).toBeLessThan(0.004);
    expect(Math.abs(realOverIdeal('shock_progressive') - 1)).toBeLessThan(0.006);
  });
});
