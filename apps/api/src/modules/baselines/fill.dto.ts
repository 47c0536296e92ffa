import { ChoiceField, NumberField, PartField, TextsField } from '../../platform/http/fields.js';

const per = { unit: '%', minimum: 0, maximum: 100 };
const mm = { unit: 'mm', minimum: -300, maximum: 300 };
const height = { unit: 'm', minimum: 0, maximum: 100 };
const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };

/** A set-up of one end with what is predicted of it on this track. */
export class EvaluatedFillDto {
  @NumberField({
    description: 'Air pressure at the track, gauge.',
    unit: 'psi',
    minimum: 0,
    maximum: 600,
    example: 68,
  })
  pressurePsi: number;

  @NumberField({ ...count, description: 'Volume spacers.', example: 3 })
  spacers: number;

  @NumberField({ ...per, description: 'Sag, of the stroke.', example: 18.1 })
  sagPct: number;

  @NumberField({ ...mm, description: 'Sag.', example: 30.8 })
  sagMm: number;

  @NumberField({ ...mm, description: 'Travel used by the median run.', example: 132 })
  medianTravelMm: number;

  @NumberField({ ...mm, description: 'Travel used by the 95th-percentile run.', example: 161 })
  travel95Mm: number;

  @NumberField({ ...mm, description: 'Travel left by the 95th-percentile run.', example: 9 })
  reserve95Mm: number;

  @NumberField({
    ...mm,
    description:
      'Travel used while braking steadily at 4 m/s² on 10° downhill, 70 % by the front wheel; null: a shock, a bike whose rear wheel would lift, or not computed.',
    example: 71,
    nullable: true,
  })
  brakingTravelMm: number | null;

  @NumberField({
    description: 'Spring force at 20 % of the stroke, lower is more supple; null: not computed.',
    unit: 'N',
    minimum: -1e5,
    maximum: 1e5,
    example: 410,
    nullable: true,
  })
  earlyForceN: number | null;

  @NumberField({ ...per, description: 'Probability that a run bottoms out.', example: 4 })
  riskPct: number;

  @NumberField({
    ...height,
    description:
      'Hit height at which it just bottoms out; null: none within range, or it bottoms under the load alone (then the risk is 100 %).',
    example: 0.72,
    nullable: true,
  })
  bottomingHeightM: number | null;
}

const change = { minimum: -1e5, maximum: 1e5 };

/** What an alternative costs: it less the recommended set-up. */
export class AlternativeCostDto {
  @NumberField({
    ...change,
    unit: '% points',
    description: 'Probability that a run bottoms out.',
    example: 2,
  })
  riskPct: number;

  @NumberField({ ...change, unit: 'mm', description: 'Travel left by the 95th-percentile run.', example: -3 })
  reserve95Mm: number;

  @NumberField({ ...change, unit: '% of the stroke', description: 'Sag.', example: 1.2 })
  sagPct: number;

  @NumberField({ ...change, unit: 'N', description: 'Force in the early stroke.', example: -18 })
  earlyForceN: number;

  @NumberField({
    ...change,
    unit: 'mm',
    description: 'Travel used under braking; null: not known.',
    example: 2,
    nullable: true,
  })
  brakingTravelMm: number | null;
}

export class AlternativeDto {
  @ChoiceField({
    description: 'In which way it differs.',
    choices: ['softer', 'firmer', 'fewer spacers', 'more spacers'],
  })
  kind: 'softer' | 'firmer' | 'fewer spacers' | 'more spacers';

  @PartField({ description: 'The set-up.', type: () => EvaluatedFillDto })
  fill: EvaluatedFillDto;

  @PartField({
    description: 'What it costs; null: stored before costs were.',
    type: () => AlternativeCostDto,
    nullable: true,
  })
  cost: AlternativeCostDto | null;

  @TextsField({
    description: 'Demands that it does not meet.',
    maxItems: 5,
    maxLength: 40,
    example: ['risk'],
  })
  breaks: string[];
}
