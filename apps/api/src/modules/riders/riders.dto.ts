import { ChoiceField, IdField, NumberField, PartField, TextField } from '../../platform/http/fields.js';
import { SOURCES, type Source } from '../../platform/database/source.js';
import { answerOf } from '../../platform/http/answer.js';
import { pageOf } from '../../platform/http/page.js';
import { VersionField } from '../../platform/http/version-field.js';

const sagPct = { unit: '%', minimum: 5, maximum: 50 };
const reservePct = { unit: '%', minimum: 0, maximum: 40 };

/** What a rider wants of one end of the bike. */
export class EndWishDto {
  @NumberField({ ...sagPct, description: 'Least sag wanted, of the stroke.', example: 15 })
  sagLowPct: number;

  @NumberField({ ...sagPct, description: 'Most sag wanted, of the stroke.', example: 20 })
  sagHighPct: number;

  @NumberField({
    ...reservePct,
    description: 'Travel wanted to be left at the 95th-percentile hit, of the stroke.',
    example: 6,
  })
  reservePct: number;
}

export class RiderInputDto {
  @TextField({ description: 'Name.', maxLength: 80, example: 'Rider A' })
  name: string;

  @NumberField({
    description: 'Mass ready to ride: clothes, protectors, pack, water.',
    unit: 'kg',
    minimum: 20,
    maximum: 200,
    example: 78,
  })
  readyMassKg: number;

  @ChoiceField({ description: 'Where the mass comes from.', choices: SOURCES, optional: true })
  readyMassSource?: Source;

  @NumberField({
    description: 'Accepted probability that a run bottoms out.',
    unit: '%',
    minimum: 0.1,
    maximum: 50,
    example: 5,
    optional: true,
  })
  acceptedRiskPct?: number;

  @PartField({ description: 'Wishes for the fork.', type: () => EndWishDto, optional: true })
  fork?: EndWishDto;

  @PartField({ description: 'Wishes for the shock.', type: () => EndWishDto, optional: true })
  shock?: EndWishDto;
}

export class RiderDto extends answerOf(RiderInputDto) {
  @IdField({ description: 'The rider.' })
  id: string;

  @VersionField()
  version: number;
}

export class RiderPageDto extends pageOf(RiderDto) {}
