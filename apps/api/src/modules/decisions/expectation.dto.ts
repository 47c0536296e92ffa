import { NumberField, PartField } from '../../platform/http/fields.js';
import { ExpectedHitDto } from '../demand/demand.dto.js';

const travel = { unit: 'mm', minimum: 0, maximum: 300, nullable: true };

/** What the engine and the demand model expected of one end at the time of a decision. */
export class ExpectedEndDto {
  @NumberField({ description: 'Sag, of the stroke.', unit: '%', minimum: 0, maximum: 100, example: 18.1 })
  sagPct: number;

  @NumberField({
    ...travel,
    description: 'Travel used by the median run; null where it was decided for no track.',
    example: 132,
  })
  medianTravelMm: number | null;

  @NumberField({
    ...travel,
    description: 'Travel used by the 95th-percentile run; null where it was decided for no track.',
    example: 161,
  })
  travel95Mm: number | null;

  @NumberField({
    description: 'Probability that a run bottoms out; null where it was decided for no track.',
    unit: '%',
    minimum: 0,
    maximum: 100,
    example: 4,
    nullable: true,
  })
  riskPct: number | null;

  @PartField({
    description: 'The forecast of hits behind them; null where it was decided for no track.',
    type: () => ExpectedHitDto,
    nullable: true,
  })
  hit: ExpectedHitDto | null;
}

export class ExpectationDto {
  @PartField({ description: 'The fork.', type: () => ExpectedEndDto, nullable: true })
  fork: ExpectedEndDto | null;

  @PartField({ description: 'The shock.', type: () => ExpectedEndDto, nullable: true })
  shock: ExpectedEndDto | null;
}
