import { SpringInputError, venuePressure, type Ambient } from '@loamledger/spring';
import { gaugePascalFromPsi, psiFromGaugePascal } from '@loamledger/units';
import type { BikeEnd } from '../features/workbench/api/bike-ends.js';
import { hasAllLimits, isAllowedPressure, limitsOf } from '../features/workbench/model/limits.js';
import { mountOf } from '../features/workbench/model/mount.js';
import type { EndSetup } from '../shared/http/reads/setups.js';

/**
 * What to pump to in the air `here`, psi, so that the end pushes back at sag as it did where it was filled; the lower
 * legs keep the air they were closed with. Null where it may not be recommended: limits not entered, beyond them, or
 * no such pressure.
 */
export function pumpTo(
  end: BikeEnd,
  { pressurePsi, spacers }: EndSetup,
  there: Ambient,
  here: Ambient,
): number | null {
  if (!hasAllLimits(end.limits)) return null;
  try {
    const mount = mountOf(end);
    const fill = {
      gaugePressure: gaugePascalFromPsi(pressurePsi),
      spacers,
      ambientPressure: there.pressure,
      temperature: there.temperature,
    };
    const { matchedAtSag } = venuePressure(mount.unit, fill, mount.end, here, 'sealed');
    if (matchedAtSag.status !== 'found') return null;
    const psi = psiFromGaugePascal(matchedAtSag.gaugePressure);
    return isAllowedPressure(limitsOf(end.limits), psi) ? psi : null;
  } catch (refusal) {
    if (refusal instanceof SpringInputError) return null;
    throw refusal;
  }
}
