import { ServiceEntryInputDto, UnitCareInputDto } from '../modules/unit-service/unit-service.dto.js';
import type { UnitServiceService } from '../modules/unit-service/unit-service.service.js';
import { checked } from './checked.js';
import { known, type DemoEquipment } from './enter-equipment.js';
import type { DemoPeople } from './enter-people.js';
import { MECHANIC } from './people.js';
import type { UnitKey } from './units.js';
import { WORKSHOP_LOG } from './workshop-log.js';

/** The mechanic enters what was serviced, and what was ridden beside the runs. */
export async function enterWorkshop(
  service: UnitServiceService,
  { mechanic }: DemoPeople,
  { units }: DemoEquipment,
): Promise<void> {
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
