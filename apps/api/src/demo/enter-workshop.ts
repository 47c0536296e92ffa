import { SpacerMovementInputDto } from '../modules/spacers/spacers.dto.js';
import type { SpacersService } from '../modules/spacers/spacers.service.js';
import { ServiceEntryInputDto, UnitCareInputDto } from '../modules/unit-service/unit-service.dto.js';
import type { UnitServiceService } from '../modules/unit-service/unit-service.service.js';
import { checked } from './checked.js';
import { known, type DemoEquipment } from './enter-equipment.js';
import type { DemoPeople } from './enter-people.js';
import { MECHANIC } from './people.js';
import type { UnitKey } from './units.js';
import { COUNTED, WORKSHOP_LOG } from './workshop-log.js';

/** The mechanic enters what was serviced, what was ridden beside the runs, and what lies in the box. */
export async function enterWorkshop(
  { service, spacers }: { service: UnitServiceService; spacers: SpacersService },
  { mechanic }: DemoPeople,
  { units }: DemoEquipment,
): Promise<void> {
  for (const count of COUNTED) await spacers.enter(mechanic, await checked(SpacerMovementInputDto, count));
  const doneBy = MECHANIC.displayName;
  for (const [key, { services, riding, ...care }] of Object.entries(WORKSHOP_LOG)) {
    const unitId = known(units, key as UnitKey);
    await service.enterCare(mechanic, unitId, await checked(UnitCareInputDto, care));
    for (const entry of [
      ...services.map((done) => ({ ...done, kind: 'service' as const, doneBy })),
      ...riding.map((ridden) => ({ ...ridden, kind: 'hours' as const, doneBy })),
    ]) {
      await service.enter(mechanic, unitId, await checked(ServiceEntryInputDto, entry));
    }
  }
}
