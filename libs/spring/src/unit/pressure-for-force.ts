import { gaugePascal, type GaugePascal } from '@loamledger/units';
import { ISOTHERMAL, pressureAt } from '../gas/chamber.js';
import { airSpring, HIGHEST_GAUGE_PRESSURE, type SpringFill } from './air-spring.js';
import type { AirSpringUnit } from './air-spring-unit.js';
import { springForce } from './force.js';

/** What is in a unit but for the pressure that is sought. */
export type UnpressurisedFill = Omit<SpringFill, 'gaugePressure'>;

/** A pressure to pump to, or why there is none. */
export type PressureAnswer =
  | { readonly status: 'found'; readonly gaugePressure: GaugePascal; readonly message: string }
  | { readonly status: 'out-of-reach'; readonly message: string };

/** Any fill serves: the force is a straight line in the absolute fill pressure. Pa. */
const PROBE_PRESSURE = gaugePascal(1e5);

/**
 * Gauge pressure at which the settled spring pushes back with `force` at `travel`, Pa.
 *
 * The pressures of both chambers are proportional to the absolute fill pressure P₀, so F(s) = P₀·G(s) + rest(s) and
 * P₀ = (F − rest)/G; docs/equations/spring.md#pressure-for-force. Not reachable where the negative chamber cancels
 * the positive (G ≤ 0, close to full extension) or where it would take less than ambient pressure.
 */
export function pressureForForce(
  unit: AirSpringUnit,
  fill: UnpressurisedFill,
  travel: number,
  force: number,
): PressureAnswer {
  const probe = airSpring(unit, { ...fill, gaugePressure: PROBE_PRESSURE });
  const probeFill = PROBE_PRESSURE + fill.ambientPressure;
  const proportional =
    pressureAt(probe.positive, travel, ISOTHERMAL) * probe.positive.area +
    pressureAt(probe.negative, travel, ISOTHERMAL) * probe.negative.area;
  const rest = springForce(probe, travel) - proportional;
  if (!(proportional > 0)) {
    return { status: 'out-of-reach', message: 'there the negative chamber cancels the positive one' };
  }
  const gaugePressure = (probeFill * (force - rest)) / proportional - fill.ambientPressure;
  if (!(gaugePressure > 0)) {
    return { status: 'out-of-reach', message: 'it would take less than the pressure of the air around' };
  }
  if (gaugePressure > HIGHEST_GAUGE_PRESSURE) {
    return { status: 'out-of-reach', message: 'it would take more pressure than any unit holds' };
  }
  return { status: 'found', gaugePressure: gaugePascal(gaugePressure), message: 'reached' };
}
