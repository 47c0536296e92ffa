import { NumberField, TextField, TextsField } from '../../platform/http/fields.js';

/** What every answer of the engine says of itself. */
export class EngineAnswerDto {
  @TextField({ description: 'Version of the spring engine.', maxLength: 20, example: '1.0.0' })
  engineVersion: string;

  @TextsField({
    description: 'Figures behind the answer that were assumed, by the names of their fields.',
    maxItems: 60,
    maxLength: 80,
    example: ['uncertainty.pressurePsi'],
  })
  assumed: string[];
}

const travel = { unit: 'mm', minimum: 0, maximum: 300 };

/** Travel along the fork's axis or the shock's shaft. */
export const TravelField = (description: string, example: number, options: { nullable?: boolean } = {}) =>
  NumberField({ ...travel, ...options, description, example });

/** Height of a drop to flat ground. */
export const HeightField = (description: string, example: number, options: { nullable?: boolean } = {}) =>
  NumberField({ ...options, unit: 'm', minimum: 0, maximum: 20, description, example });
