import { accepted, archived } from '../../platform/archive/archived.js';
import { message } from '../../platform/archive/checks.js';
import { RiderEntity } from './rider.entity.js';
import { RiderDto } from './riders.dto.js';
import { answer, checkedBand } from './riders.service.js';

export const RIDER_ARCHIVE = archived(RiderEntity, {
  row: message(RiderDto, answer),
  rules: [
    accepted((rider) => {
      const { fork, shock } = answer(rider);
      checkedBand('fork', fork);
      checkedBand('shock', shock);
    }),
  ],
});
