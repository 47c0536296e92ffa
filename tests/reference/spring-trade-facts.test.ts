import { describe, expect, it } from 'vitest';
import {
  airSpring,
  hitHeight,
  pressureForSag,
  spacerTrade,
  springForce,
  travelForHeight,
  type Scene,
} from '@loamledger/spring';
import { absolutePascal, gaugePascalFromPsi, kelvin, psiFromGaugePascal } from '@loamledger/units';
import { endOf, genericUnits, unitOf } from './spring-reference.js';

/**
 * What mechanics say of spacers (common practice, no source), held as order, monotonicity and range over a family of
 * generic forks: chambers from tight to roomy, spacers from 8 to 11 mL, each pumped to 20 % sag.
 */
const family: [string, Scene][] = Object.entries(genericUnits)
  .filter(([, g]) => g.A_c > 0 && g.max_spacers >= 4)
  .flatMap(([name, g]) =>
    [
      { dead: 0.065, spacer: 11e-6 },
      { dead: 0.08, spacer: 10e-6 },
      { dead: 0.1, spacer: 8e-6 },
    ].map(({ dead, spacer }): [string, Scene] => {
      const unit = {
        ...unitOf(g),
        positiveVolume: g.A * (g.S + dead),
        spacerVolume: (spacer * g.A * g.S) / (9.08e-4 * 0.17),
      };
      const fill = { spacers: 0, ambientPressure: absolutePascal(g.p_a), temperature: kelvin(g.T) };
      const answer = pressureForSag(unit, fill, endOf(g), 0.2);
      if (answer.status !== 'found') throw new Error(answer.message);
      const label = `${name}, ${dead * 1e3} mm dead length`;
      return [label, { unit, end: endOf(g), fill: { ...fill, gaugePressure: answer.gaugePressure } }];
    }),
  );

const springWith = ({ unit, fill }: Scene, spacers: number) => airSpring(unit, { ...fill, spacers });

/** The hit that leaves 2.5 mm of the travel without spacers. */
function bigHit(scene: Scene): number {
  const travelUsed = scene.unit.stroke - 0.0025;
  const result = hitHeight(springWith(scene, 0), scene.end, { travelUsed, readingSd: 1e-4 }, { gaugeSd: 0, massSd: 0 });
  if (result.status !== 'solved') throw new Error(result.message);
  return result.height;
}

describe.each(family)('common practice of spacers: %s', (_, scene) => {
  const height = bigHit(scene);
  const left = (spacers: number) =>
    scene.unit.stroke - travelForHeight(springWith(scene, spacers), scene.end, height).travel;
  const gain = (part: number) => {
    const travel = part * scene.unit.stroke;
    return springForce(springWith(scene, 4), travel) / springForce(springWith(scene, 0), travel) - 1;
  };

  it('same pressure, same big hit: every spacer leaves more travel, four between 7 and 31 mm', () => {
    const leftOver = [0, 1, 2, 3, 4].map(left);
    for (let n = 1; n <= 4; n++) expect(leftOver[n]).toBeGreaterThan(leftOver[n - 1] ?? NaN);
    expect(leftOver[4]).toBeGreaterThan(0.007);
    expect(leftOver[4]).toBeLessThan(0.031);
  });

  it('the early stroke feels the same: at 20 % travel four spacers add 3 to 12 %, at 95 % a multiple of that', () => {
    expect(gain(0.2)).toBeGreaterThan(0.03);
    expect(gain(0.2)).toBeLessThan(0.12);
    expect(gain(0.95)).toBeGreaterThan(5 * gain(0.2));
  });

  // 'A spacer in lets 3 psi out, sometimes 5 to 10', said of forks at about 65 psi and to the nearest psi.
  it('a spacer in lets 2.5 to 10.5 psi in 65 out for the same peak travel, less for the middle, least for the sag', () => {
    const trade = spacerTrade(scene.unit, scene.fill, scene.end, 1, height);
    const taken = (target: (typeof trade)['sag']) => {
      if (target.status !== 'found') throw new Error(target.message);
      return -target.change / scene.fill.gaugePressure;
    };
    const [sag, middle, peak] = [taken(trade.sag), taken(trade.midStroke), taken(trade.peakTravel)];
    expect(sag).toBeGreaterThan(0);
    expect(middle).toBeGreaterThan(sag);
    expect(peak).toBeGreaterThan(middle);
    expect(peak).toBeGreaterThan(2.5 / 65);
    expect(peak).toBeLessThan(10.5 / 65);
  });
});

describe('the generic 170 mm fork at 65 psi', () => {
  const g = genericUnits.fork170;
  if (g === undefined) throw new Error('no such fork');
  const scene: Scene = {
    unit: unitOf(g),
    end: endOf(g),
    fill: {
      gaugePressure: gaugePascalFromPsi(65),
      spacers: 0,
      ambientPressure: absolutePascal(g.p_a),
      temperature: kelvin(g.T),
    },
  };
  const height = bigHit(scene);

  it('leaves 17.8 mm with four spacers where none leave 2.5 mm (common practice says about 25 mm)', () => {
    const left = g.S - travelForHeight(springWith(scene, 4), scene.end, height).travel;
    expect(left).toBeCloseTo(0.0178, 4);
  });

  it('gives 5.7, 2.4 and 1.0 psi back for one spacer: peak travel, mid-stroke, sag', () => {
    const trade = spacerTrade(scene.unit, scene.fill, scene.end, 1, height);
    const change = (target: (typeof trade)['sag']) =>
      target.status === 'found' ? psiFromGaugePascal(target.gaugePressure) - 65 : NaN;
    expect(change(trade.peakTravel)).toBeCloseTo(-5.7, 1);
    expect(change(trade.midStroke)).toBeCloseTo(-2.4, 1);
    expect(change(trade.sag)).toBeCloseTo(-1, 1);
  });
});
