import { accepted, archived } from '../../platform/archive/archived.js';
import { message, part, word } from '../../platform/archive/checks.js';
import { SOURCES } from '../../platform/database/source.js';
import { refuseImpossibleUnit } from './engine-unit.js';
import { SpringUnitEntity } from './spring-unit.entity.js';
import { SpringUnitDto } from './spring-units.dto.js';
import { answer, refuseReversedLimits } from './spring-units.service.js';
import { PARAMETER_FIELDS, PARAMETER_NAMES } from './unit-parameters.js';

const PARAMETERS = PARAMETER_NAMES.map((name) => PARAMETER_FIELDS[name].column);

export const SPRING_UNIT_ARCHIVE = archived(SpringUnitEntity, {
  columns: { sources: part(Object.fromEntries(PARAMETERS.map((name) => [name, word(SOURCES)])), PARAMETERS) },
  row: message(SpringUnitDto, (unit: SpringUnitEntity) => answer(unit, 0)),
  rules: [
    accepted((unit) => {
      refuseReversedLimits(answer(unit, 0));
      refuseImpossibleUnit(unit);
    }),
  ],
});
