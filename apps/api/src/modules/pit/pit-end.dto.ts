import {
  ChoiceField,
  FlagField,
  IdField,
  NumberField,
  PartField,
  TextField,
} from '../../platform/http/fields.js';
import { ServiceStandingDto } from '../unit-service/unit-service.dto.js';

/** Why nothing is recommended. */
const NO_PUMP_TO = ['no limits', 'beyond limits', 'out of reach', 'another unit', 'not computable'] as const;
export type NoPumpTo = (typeof NO_PUMP_TO)[number];

const psi = { unit: 'psi', minimum: -20, maximum: 1_000 };

/** An end in today's air, where it was filled in other air. */
export class PitTodayDto {
  @NumberField({
    ...psi,
    description:
      'What to pump to so that it pushes back at sag as it did where it was filled; null: nothing is recommended.',
    example: 73.2,
    nullable: true,
  })
  pumpToPsi: number | null;

  @NumberField({ ...psi, description: 'What a gauge shows if nobody has touched it since.', example: 68.3 })
  leftAlonePsi: number;

  @ChoiceField({ description: 'Why nothing is recommended.', choices: NO_PUMP_TO, nullable: true })
  whyNot: NoPumpTo | null;
}

export class PitSpacersDto {
  @NumberField({
    description:
      'Most spacers that waiting work and open test plans put in, beyond those that are in it now.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 30,
    example: 1,
  })
  needed: number;

  @NumberField({
    description: 'Spacers of its size in stock.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e6,
    example: 4,
  })
  inStock: number;

  @FlagField({ description: 'Whether more are needed than lie in stock.', example: false })
  isShort: boolean;
}

/** The fork or shock in a bike. */
export class PitEndDto {
  @IdField({ description: 'The unit.' })
  unitId: string;

  @TextField({ description: 'Its name.', maxLength: 80, example: 'Fork of bike A' })
  unitName: string;

  @FlagField({ description: "Whether all limits of the unit's manual are entered.", example: true })
  hasLimits: boolean;

  @PartField({
    description: 'Today; null: it was pumped at the track, there is no set-up, or no track is meant.',
    type: () => PitTodayDto,
    nullable: true,
  })
  today: PitTodayDto | null;

  @PartField({ description: 'Spacers that are needed, against stock.', type: () => PitSpacersDto })
  spacers: PitSpacersDto;

  @PartField({ description: 'How it stands against its service interval.', type: () => ServiceStandingDto })
  service: ServiceStandingDto;
}
