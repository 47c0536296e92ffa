import { readFileSync } from 'node:fs';
import { airSpring, type AirSpring, type LeverageCurve, type SprungEnd } from '@loamledger/spring';
import { absolutePascal, gaugePascal, kelvin } from '@loamledger/units';

/** One landing whose peak is known: the same equations for this engine and for any other package. */
export interface ReferenceLanding {
  readonly label: string;
  readonly height: number;
  readonly peakTravel: number;
  readonly peakTime: number;
  readonly bottoms: boolean;
  readonly spring: AirSpring;
  readonly end: SprungEnd;
}

interface StoredLanding {
  label: string;
  h_m: number;
  parameters: Record<string, number>;
  outputs: { status: string; x_peak_m: number; t_peak_s: number };
}

const FILE = new URL('../../tests/reference/landing_ode.json', import.meta.url);

export function referenceLandings(): ReferenceLanding[] {
  const stored = JSON.parse(readFileSync(FILE, 'utf8')) as { outputs: StoredLanding[] };
  return stored.outputs.map((landing) => ({
    label: landing.label,
    height: landing.h_m,
    peakTravel: landing.outputs.x_peak_m,
    peakTime: landing.outputs.t_peak_s,
    bottoms: landing.outputs.status === 'bottomed',
    ...setUp(landing.parameters),
  }));
}

function setUp(parameters: Record<string, number>): { spring: AirSpring; end: SprungEnd } {
  const p = (key: string): number => {
    const value = parameters[key];
    if (value === undefined) throw new Error(`no ${key} in the reference`);
    return value;
  };
  // The file stores 1/τ, with −1 for isothermal.
  const time = (key: string) => (p(key) === -1 ? 0 : 1 / p(key));
  const unit = {
    kind: p('A_c') === 0 ? ('shock' as const) : ('fork' as const),
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
      positive: time('inv_tau_p(-1=isothermal)'),
      negative: time('inv_tau_n'),
      lowerLeg: time('inv_tau_c'),
    },
  };
  const fill = {
    gaugePressure: gaugePascal(p('P0_abs') - p('p_a')),
    spacers: 0,
    ambientPressure: absolutePascal(p('p_a')),
    temperature: kelvin(p('T_w')),
    lowerLegPressure: absolutePascal(p('P_c0_abs')),
  };
  const leverage = polynomial(p('lr0'), p('lr1'), p('lr2'), p('S'));
  return { spring: airSpring(unit, fill), end: { sprungMass: p('m'), leverage } };
}

function polynomial(c0: number, c1: number, c2: number, stroke: number): LeverageCurve {
  return {
    ratio: (s) => c0 + (c1 * s) / stroke + c2 * (s / stroke) ** 2,
    slope: (s) => (c1 + (2 * c2 * s) / stroke) / stroke,
    wheelTravel: (s) => s * (c0 + (c1 * s) / stroke / 2 + (c2 * (s / stroke) ** 2) / 3),
  };
}
