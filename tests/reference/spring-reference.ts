import { readFileSync } from 'node:fs';
import {
  airSpring,
  DEFAULT_THERMAL_TIME,
  type AirSpring,
  type AirSpringUnit,
  type LeverageCurve,
  type SpringFill,
  type SprungEnd,
} from '@loamledger/spring';
import { absolutePascal, gaugePascal, gaugePascalFromPsi, kelvin } from '@loamledger/units';

/** Reads the outputs of one of the reference files beside this one. */
export function referenceOutputs<T>(name: string): T {
  const file = JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')) as { outputs: T };
  return file.outputs;
}

/** Leverage ratio c0 + c1·u + c2·u² over u = travel / stroke, as the reference files have it for shocks. */
function leveragePolynomial(c0: number, c1: number, c2: number, stroke: number): LeverageCurve {
  return {
    ratio: (s) => c0 + (c1 * s) / stroke + c2 * (s / stroke) ** 2,
    slope: (s) => (c1 + (2 * c2 * s) / stroke) / stroke,
    wheelTravel: (s) => s * (c0 + (c1 * s) / stroke / 2 + (c2 * (s / stroke) ** 2) / 3),
  };
}

/** One landing of landing_ode.json. */
export interface LandingCase {
  label: string;
  h_m: number;
  parameters: Record<string, number>;
  outputs: Record<string, number> & { status: string };
}

export const landingCases = () => referenceOutputs<LandingCase[]>('landing_ode');

export function numberOf(record: Record<string, number | string>, key: string): number {
  const found = record[key];
  if (typeof found !== 'number') throw new Error(`no number ${key}`);
  return found;
}

/** The file stores 1/τ, with −1 for isothermal and 0 for adiabatic. */
function thermalTime(rate: number): number {
  return rate === -1 ? 0 : 1 / rate;
}

export function setUpLanding({ parameters }: LandingCase): { spring: AirSpring; end: SprungEnd } {
  const p = (key: string) => numberOf(parameters, key);
  const spring = airSpring(
    {
      kind: p('A_c') === 0 ? 'shock' : 'fork',
      stroke: p('S'),
      boreArea: p('A'),
      shaftArea: p('A') - p('A_n'),
      positiveVolume: p('V_p'),
      spacerVolume: 0,
      maxSpacers: 0,
      negativeVolume: p('V_n0'),
      transferPosition: p('x_t'),
      lowerLegVolume: p('V_c0'),
      lowerLegArea: p('A_c'),
      bumperLength: p('L_b'),
      bumperEndForce: p('F_b'),
      damper: { lowSpeed: p('c_l'), kneeSpeed: p('v_k'), highSpeed: p('c_h') },
      sealFriction: p('F_f'),
      thermalTime: {
        positive: thermalTime(p('inv_tau_p(-1=isothermal)')),
        negative: thermalTime(p('inv_tau_n')),
        lowerLeg: thermalTime(p('inv_tau_c')),
      },
    },
    {
      gaugePressure: gaugePascal(p('P0_abs') - p('p_a')),
      spacers: 0,
      ambientPressure: absolutePascal(p('p_a')),
      temperature: kelvin(p('T_w')),
      lowerLegPressure: absolutePascal(p('P_c0_abs')),
    },
  );
  return {
    spring,
    end: {
      sprungMass: p('m'),
      leverage: leveragePolynomial(p('lr0'), p('lr1'), p('lr2'), p('S')),
    },
  };
}

/** One invented unit of generic_units.json. */
export interface GenericUnit {
  S: number;
  A: number;
  A_shaft: number;
  A_c: number;
  Vp0: number;
  Vn0: number;
  Vc0: number;
  x_t: number;
  L_b: number;
  F_b: number;
  c_l: number;
  v_k: number;
  c_h: number;
  F_f: number;
  m: number;
  lr: [number, number, number];
  v_s: number;
  max_spacers: number;
  p_psi: number;
  p_a: number;
  T: number;
  sag_mm: number;
  sag_frac: number;
  wheel_travel_mm: number;
  wheel_sag_frac: number;
}

export const genericUnits = referenceOutputs<Record<string, GenericUnit>>('generic_units');

export function genericUnit(name: string): GenericUnit {
  const unit = genericUnits[name];
  if (unit === undefined) throw new Error(`no generic unit ${name}`);
  return unit;
}

export function unitOf(g: GenericUnit): AirSpringUnit {
  return {
    kind: g.A_c === 0 ? 'shock' : 'fork',
    stroke: g.S,
    boreArea: g.A,
    shaftArea: g.A_shaft,
    positiveVolume: g.Vp0,
    spacerVolume: g.v_s,
    maxSpacers: g.max_spacers,
    negativeVolume: g.Vn0,
    transferPosition: g.x_t,
    lowerLegVolume: g.Vc0,
    lowerLegArea: g.A_c,
    bumperLength: g.L_b,
    bumperEndForce: g.F_b,
    damper: { lowSpeed: g.c_l, kneeSpeed: g.v_k, highSpeed: g.c_h },
    sealFriction: g.F_f,
    thermalTime: DEFAULT_THERMAL_TIME,
  };
}

export function fillOf(g: GenericUnit, spacers: number): SpringFill {
  return {
    gaugePressure: gaugePascalFromPsi(g.p_psi),
    spacers,
    ambientPressure: absolutePascal(g.p_a),
    temperature: kelvin(g.T),
  };
}

export function endOf(g: GenericUnit): SprungEnd {
  return { sprungMass: g.m, leverage: leveragePolynomial(...g.lr, g.S) };
}

/** Standard normal numbers from a fixed linear congruential sequence (Box–Muller). */
export function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
