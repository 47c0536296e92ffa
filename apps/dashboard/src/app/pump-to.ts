import { pumpTo as pumpToAt, SpringInputError, type Ambient } from '@loamledger/spring';
import { gaugePascalFromPsi, psiFromGaugePascal } from '@loamledger/units';
import type { BikeEnd } from '../features/workbench/api/bike-ends.js';
import { mountOf } from '../features/workbench/model/mount.js';
import type { EndSetup } from '../shared/http/reads/setups.js';

/**
 * What to pump to in the air `here`, psi: the library's rule, computed on the device so that it is known without
 * signal. Null where nothing is recommended, and where the set-up is that of another unit than the one in the bike.
 */
export function pumpTo(
  end: BikeEnd,
  { unitId, pressurePsi, spacers }: EndSetup,
  there: Ambient,
  here: Ambient,
): number | null {
  if (end.unitId !== unitId) return null;
  try {
    const mount = mountOf(end);
    const fill = {
      gaugePressure: gaugePascalFromPsi(pressurePsi),
      spacers,
      ambientPressure: there.pressure,
      temperature: there.temperature,
    };
    const { minPressurePsi, maxPressurePsi, maxSpacers } = end.limits;
    const answer = pumpToAt(mount.unit, fill, mount.end, here, {
      minPressure: minPressurePsi === null ? null : gaugePascalFromPsi(minPressurePsi),
      maxPressure: maxPressurePsi === null ? null : gaugePascalFromPsi(maxPressurePsi),
      maxSpacers,
    });
    return answer.status === 'found' ? psiFromGaugePascal(answer.gaugePressure) : null;
  } catch (refusal) {
    if (refusal instanceof SpringInputError) return null;
    throw refusal;
  }
}
