import { ChoiceField, NumberField, PartField } from '../../platform/http/fields.js';
import { EngineAnswerDto } from './answer.dto.js';
import { AirDto, FillDto, withEnd } from './end.dto.js';
import { PressureDto } from './sag.dto.js';

export class VenueAskDto {
  @PartField({ description: 'What is in the unit here.', type: () => FillDto })
  fill: FillDto;

  @PartField({ description: 'The air at the venue.', type: () => AirDto })
  venue: AirDto;

  @ChoiceField({
    description: 'Whether the lower legs are bled at the venue or keep their air.',
    choices: ['sealed', 'bled'],
  })
  lowerLegs: 'sealed' | 'bled';
}

export class VenueQuestionDto extends withEnd(VenueAskDto) {}

const air = { unit: 'hPa', minimum: 0, maximum: 5_000 };

export class VenueAnswerDto extends EngineAnswerDto {
  @NumberField({ ...air, description: 'Absolute air pressure at the venue.', example: 851 })
  venuePressureHpa: number;

  @NumberField({
    description: 'Air temperature at the venue.',
    unit: '°C',
    minimum: -60,
    maximum: 60,
    example: 12,
  })
  venueTemperatureC: number;

  @NumberField({
    description: 'What a gauge shows there if nothing is done.',
    unit: 'psi',
    minimum: -100,
    maximum: 1_000,
    example: 72.1,
  })
  untouchedPsi: number;

  @NumberField({
    ...air,
    description: 'Absolute pressure of the lower-leg air there at full extension.',
    example: 985,
  })
  lowerLegPressureHpa: number;

  @PartField({ description: 'Gives the settled force at sag that it has here.', type: () => PressureDto })
  matchedAtSag: PressureDto;

  @PartField({
    description: 'Gives the settled force at half travel that it has here.',
    type: () => PressureDto,
  })
  matchedAtMidStroke: PressureDto;
}
