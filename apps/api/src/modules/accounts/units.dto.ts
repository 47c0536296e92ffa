import { ChoiceField } from '../../platform/http/fields.js';
import { VersionField } from '../../platform/http/version-field.js';
import { MASS_UNITS, PRESSURE_UNITS, TEMPERATURE_UNITS, type AccountUnits } from './account-units.js';

export class UnitsInputDto {
  @ChoiceField({ description: 'Unit in which pages show pressures.', choices: PRESSURE_UNITS })
  pressure: AccountUnits['pressure'];

  @ChoiceField({ description: 'Unit in which pages show masses.', choices: MASS_UNITS })
  mass: AccountUnits['mass'];

  @ChoiceField({ description: 'Unit in which pages show temperatures.', choices: TEMPERATURE_UNITS })
  temperature: AccountUnits['temperature'];
}

/** The units in which a person reads; messages of the API keep those of their field names. */
export class UnitsDto extends UnitsInputDto {
  @VersionField()
  version: number;
}
