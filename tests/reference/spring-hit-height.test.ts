import { describe, expect, it } from 'vitest';
import { airSpring, bottomingHeight, hitHeight, suddenLoadTravel } from '@loamledger/spring';
import { endOf, fillOf, genericUnit, referenceOutputs, unitOf } from './spring-reference.js';

interface Conditioning {
  setup: string;
  n: number;
  u: number;
  h: number;
  dh_dx_m_per_m: number;
  x_min_h0: number;
  h_lo: number;
  h_hi: number | null;
  h_bottom: number;
}

/** What the file's h_lo and h_hi stand for: a fork's ring is read to 2 mm, a shock's to 1 mm. */
const READING_SD = { fork: 0.002, shock: 0.001 };
const NO_OTHER_ERRORS = { gaugeSd: 0, massSd: 0 };

describe.each(referenceOutputs<{ h_conditioning: Conditioning[] }>('inverse_problems').h_conditioning)(
  'hit height: $setup, $n spacers, $u of the stroke used',
  (reference) => {
    const g = genericUnit(reference.setup);
    const spring = airSpring(unitOf(g), fillOf(g, reference.n));
    const end = endOf(g);
    const readingSd = READING_SD[spring.unit.kind];
    const travelUsed = reference.u * g.S;
    const result = hitHeight(spring, end, { travelUsed, readingSd }, NO_OTHER_ERRORS);
    if (result.status !== 'solved') throw new Error(result.message);

    it('meets the height to 1e-6 m and its slope to 1e-3 (the file: finite differences, 1 %)', () => {
      expect(Math.abs(result.height - reference.h)).toBeLessThan(1e-6);
      const slope = (result.logSd * result.height) / readingSd;
      expect(Math.abs(slope / reference.dh_dx_m_per_m - 1)).toBeLessThan(1e-3);
    });

    it('its standard interval is that of readings one error off, to second order', () => {
      // Where a reading one error off is already full travel or the travel of a sudden load there is no such interval.
      if (reference.h_hi === null || reference.h_lo === 0) return;
      const half = (reference.h_hi - reference.h_lo) / 2;
      // Half the distance of the two heights is the slope times the error up to third order: 5 % of it where h is small.
      expect(Math.abs((result.logSd * result.height) / half - 1)).toBeLessThan(0.05);
    });

    it('says "at least" only where the travel left is within 1.5 reading errors', () => {
      const left = g.S - travelUsed;
      expect(result.kind).toBe(left <= 1.5 * readingSd ? 'at-least' : 'exact');
    });

    it('meets the least travel to 1e-7 m, and bottoms no higher than the stored bisection ended', () => {
      expect(Math.abs(suddenLoadTravel(spring, end).travel - reference.x_min_h0)).toBeLessThan(1e-7);
      const bottoming = bottomingHeight(spring, end);
      if (bottoming.status !== 'found') throw new Error(bottoming.status);
      // See spring-statics.test.ts: the stored heights are upper ends of a bisection.
      expect(bottoming.height).toBeLessThan(reference.h_bottom + 1e-6);
      expect(reference.h_bottom - bottoming.height).toBeLessThan(5e-5);
    });
  },
);
