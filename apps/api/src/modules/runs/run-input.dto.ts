import {
  ChoiceField,
  DayField,
  FlagField,
  IdField,
  MomentField,
  NumberField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { CONDITIONS, type Condition } from '../sessions/conditions.js';
import { MAX_SECTIONS } from '../tracks/tracks.dto.js';

/** No run takes longer, s. */
export const LONGEST_RUN_S = 7_200;

const travel = { unit: 'mm', minimum: 0, maximum: 300, optional: true, nullable: true };
const rating = {
  unit: '1 (bad) to 5 (good)',
  integer: true,
  minimum: 1,
  maximum: 5,
  example: 4,
  optional: true,
  nullable: true,
};

/** What was read off one end after a run. */
export class EndReadingInputDto {
  @NumberField({
    ...travel,
    description:
      'Travel used by the ring, along the fork axis or the shock shaft. Give this or travelLeftMm.',
    example: 152,
  })
  travelUsedMm?: number | null;

  @NumberField({ ...travel, description: 'Travel left by the ring. Give this or travelUsedMm.', example: 18 })
  travelLeftMm?: number | null;

  @NumberField({
    description: 'Standard uncertainty of the reading; 2 mm if left out.',
    unit: 'mm',
    minimum: 0.1,
    maximum: 20,
    example: 2,
    optional: true,
  })
  readingSdMm?: number;

  @NumberField({
    description: 'Bottom-outs felt; null: not said.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 100,
    example: 0,
    optional: true,
    nullable: true,
  })
  bottomOuts?: number | null;
}

/** How it felt. */
export class RatingsDto {
  @NumberField({ ...rating, description: 'Support on big hits.' })
  support?: number | null;

  @NumberField({ ...rating, description: 'Comfort on small bumps.' })
  comfort?: number | null;

  @NumberField({ ...rating, description: 'Stays high in corners and under braking.' })
  rideHeight?: number | null;

  @NumberField({ ...rating, description: 'Hands and arms: 5 is fresh.' })
  fatigue?: number | null;
}

/** Why a run does not count. */
export class VoidInputDto {
  @TextField({
    description: 'Why the run is void.',
    maxLength: 500,
    example: 'Slid out in the second corner.',
  })
  reason: string;

  @FlagField({
    description: 'Whether its ring readings still say something about the track; false if left out.',
    example: false,
    optional: true,
  })
  readingsCount?: boolean;
}

/** The time of one section of the track. */
export class SectionTimeDto {
  @TextField({ description: 'Name of the section, as the track has it.', maxLength: 80, example: 'Stairs' })
  section: string;

  @NumberField({ description: 'Its time.', unit: 's', minimum: 0.1, maximum: LONGEST_RUN_S, example: 41.2 })
  timeS: number;
}

export class RunInputDto {
  @IdField({
    description: 'The session; or leave it out and give trackId, day and condition.',
    optional: true,
  })
  sessionId?: string;

  @IdField({ description: 'The track, where no session is given.', optional: true })
  trackId?: string;

  @DayField({ description: 'The day, where no session is given.', example: '2026-05-09', optional: true })
  day?: string;

  @ChoiceField({
    description: "State of the ground, where no session is given; 'dry' if left out.",
    choices: CONDITIONS,
    optional: true,
  })
  condition?: Condition;

  @NumberField({
    description:
      'Air temperature, where no session is given; one that differs from that of the sessions of the day makes another.',
    unit: '°C',
    minimum: -40,
    maximum: 55,
    example: 6,
    optional: true,
    nullable: true,
  })
  airTemperatureC?: number | null;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: "The rider; the bike's if left out.", optional: true })
  riderId?: string;

  @IdField({ description: "The set-up ridden; the bike's newest if left out.", optional: true })
  setupId?: string;

  @MomentField({
    description: 'When the run started.',
    example: '2026-05-09T10:30:00Z',
    optional: true,
    nullable: true,
  })
  startedAt?: string | null;

  @NumberField({
    description: 'Time of the run; null: not timed.',
    unit: 's',
    minimum: 1,
    maximum: LONGEST_RUN_S,
    example: 187.4,
    optional: true,
    nullable: true,
  })
  timeS?: number | null;

  @PartsField({
    description:
      'Times of sections of the track, as many as there are; together at most the time of the run.',
    type: () => SectionTimeDto,
    maxItems: MAX_SECTIONS,
    optional: true,
  })
  sectionTimes?: SectionTimeDto[];

  @PartField({ description: 'The fork.', type: () => EndReadingInputDto, optional: true, nullable: true })
  fork?: EndReadingInputDto | null;

  @PartField({ description: 'The shock.', type: () => EndReadingInputDto, optional: true, nullable: true })
  shock?: EndReadingInputDto | null;

  @PartField({ description: 'How it felt.', type: () => RatingsDto, optional: true, nullable: true })
  ratings?: RatingsDto | null;

  @TextField({
    description: 'Note.',
    minLength: 0,
    maxLength: 2_000,
    example: 'Harsh on the roots.',
    optional: true,
  })
  note?: string;

  @PartField({
    description: 'Given for a run that was spoilt: it is stored, and void from the start.',
    type: () => VoidInputDto,
    optional: true,
    nullable: true,
  })
  spoilt?: VoidInputDto | null;
}
