import { createRequire } from 'node:module';
import type { AirSpring, SprungEnd } from '@loamledger/spring';
import type { ReferenceLanding } from './reference-landings.js';

/** What is used of `odex` 2 (Gragg–Bulirsch–Stoer after Hairer and Wanner), which ships no declarations. */
interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  denseOutput: boolean;
  initialStepSize: number;
  solve(
    derivative: (t: number, y: number[]) => number[],
    start: number,
    y: number[],
    end: number,
    onStep: (
      n: number,
      from: number,
      to: number,
      y: number[],
      at: (i: number, t: number) => number,
    ) => boolean | undefined,
  ): unknown;
}
const require = createRequire(import.meta.url);
const { Solver } = require('odex') as {
  Solver: new (dimension: number) => OdexSolver;
};

const GRAVITY = 9.80665;
/** Longer than any hit of the reference, s. */
const LONGEST = 1;

/** Peak travel and time by a general-purpose package, its dense output searched for the peak or the end of the stroke. */
export function landWithPackage(
  landing: ReferenceLanding,
  tolerance: number,
): { travel: number; time: number } {
  const { spring, end, height } = landing;
  const solver = new Solver(5);
  // One tolerance for all variables: relative, and absolute in metres where the values pass through 0.
  solver.relativeTolerance = tolerance;
  solver.absoluteTolerance = tolerance * spring.stroke;
  solver.denseOutput = true;
  solver.initialStepSize = 1e-4;
  const speed = Math.sqrt(2 * GRAVITY * height) / end.leverage.ratio(0);
  const { temperature } = spring;
  const found = { travel: NaN, time: NaN };
  solver.solve(
    equations(spring, end),
    0,
    [0, speed, temperature, temperature, temperature],
    LONGEST,
    (n, from, to, y, at) => {
      const [travel = NaN, v = NaN] = y;
      if (n === 1 || (v > 0 && travel < spring.stroke)) return undefined;
      const isOver = (t: number) => at(1, t) <= 0 || at(0, t) >= spring.stroke;
      let [low, high] = [from, to];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (isOver(middle)) high = middle;
        else low = middle;
      }
      found.travel = at(0, high);
      found.time = high;
      return false;
    },
  );
  return found;
}

/** The equations of motion as a general-purpose package takes them. */
function equations(spring: AirSpring, end: SprungEnd): (t: number, y: number[]) => number[] {
  const { unit, ambientPressure, temperature: wall, bumperContact } = spring;
  const { lowSpeed, kneeSpeed, highSpeed } = unit.damper;
  const chambers = [spring.positive, spring.negative, spring.lowerLeg].map((c) => ({
    ...c,
    constant: (c.pressure * c.volume) / wall,
    rate: c.thermalTime === 0 ? 0 : 1 / c.thermalTime,
    heating: c.thermalTime === 0 ? 0 : 0.4,
  }));
  const { sprungMass, leverage } = end;
  return (_, [s = 0, v = 0, ...temperatures]) => {
    let force = unit.sealFriction;
    const rates = chambers.map((c, i) => {
      const t = temperatures[i] ?? wall;
      const density = t / (c.volume - c.area * s);
      force += (c.constant * density - ambientPressure) * c.area;
      return (wall - t) * c.rate + c.heating * density * c.area * v;
    });
    const depth = s - bumperContact;
    if (depth > 0) force += unit.bumperEndForce * (depth / unit.bumperLength) ** 2;
    force += v < kneeSpeed ? lowSpeed * v : lowSpeed * kneeSpeed + highSpeed * (v - kneeSpeed);
    const ratio = leverage.ratio(s);
    return [v, (GRAVITY - force / (sprungMass * ratio) - leverage.slope(s) * v * v) / ratio, ...rates];
  };
}
