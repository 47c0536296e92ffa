import { Type } from 'class-transformer';
import { ChoiceField, IdField, NumberField } from '../../platform/http/fields.js';
import { TRENDS } from '../test-plans/test-plan-input.dto.js';

export class ComparisonQuery {
  @IdField({ description: 'The bike.' })
  bikeId: string;

  @IdField({ description: 'The track.' })
  trackId: string;

  @IdField({ description: 'Only runs of this session.', optional: true })
  sessionId?: string;

  @IdField({ description: 'The set-up that others are compared with.' })
  currentSetupId: string;

  @IdField({
    description: 'Only this set-up is compared with it; all that were ridden if left out.',
    optional: true,
  })
  setupId?: string;

  @Type(() => Number)
  @NumberField({
    description: 'Difference of time worth acting on; 1 % if left out.',
    unit: '% of time',
    minimum: 0.1,
    maximum: 20,
    example: 1,
    optional: true,
  })
  marginPct?: number;

  @ChoiceField({
    description: "Trend over the session that is taken out; 'linear' if left out.",
    choices: TRENDS,
    optional: true,
    example: 'linear',
  })
  trend?: (typeof TRENDS)[number];
}
