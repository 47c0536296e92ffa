import { accepted, agrees, archived, refersTo } from '../../platform/archive/archived.js';
import { message } from '../../platform/archive/checks.js';
import { InvalidField } from '../../platform/errors/refusal.js';
import { refuseFilledHalfKnown, setupAnswer } from './setup-figures.js';
import { SetupEntity } from './setup.entity.js';
import { SetupDto } from './setups.dto.js';

export const SETUP_ARCHIVE = archived(SetupEntity, {
  people: ['createdBy'],
  row: message(SetupDto, setupAnswer),
  rules: [
    refersTo('forkUnitId', 'kind', 'fork'),
    refersTo('shockUnitId', 'kind', 'shock'),
    agrees('previousId', 'bikeId'),
    accepted((setup, of) => {
      const { shockUnitId, shockPressure, shockSpacers } = setup;
      if ([shockPressure, shockSpacers].some((figure) => (figure === null) !== (shockUnitId === null))) {
        throw new InvalidField(
          'setup.half-a-shock',
          'shockPressure',
          shockPressure,
          'there with a shock only',
        );
      }
      refuseFilledHalfKnown(setupAnswer(setup));
      const before = of('previousId') as SetupEntity | null;
      if (before ? before.revision >= setup.revision : setup.revision !== 1) {
        throw new InvalidField(
          'setup.out-of-order',
          'revision',
          setup.revision,
          'after the one before, from 1',
        );
      }
    }),
  ],
});
