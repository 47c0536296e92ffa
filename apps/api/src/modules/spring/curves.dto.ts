import { NumberField, PartField, PartsField } from '../../platform/http/fields.js';
import { EngineAnswerDto, TravelField } from './answer.dto.js';
import { FillDto, withEnd } from './end.dto.js';

const MOST_POINTS = 501;

export class CurvesAskDto {
  @PartField({ description: 'What is in the unit.', type: () => FillDto })
  fill: FillDto;

  @NumberField({
    description: 'Points of each curve; 101 if left out.',
    unit: '1',
    integer: true,
    minimum: 2,
    maximum: MOST_POINTS,
    example: 101,
    optional: true,
  })
  points?: number;
}

export class CurvesQuestionDto extends withEnd(CurvesAskDto) {}

export class CurvePointDto {
  @TravelField('Travel.', 85)
  travelMm: number;

  @NumberField({
    description: 'Force of gas and bumper.',
    unit: 'N',
    minimum: -1e6,
    maximum: 1e6,
    example: 640,
  })
  forceN: number;

  @NumberField({
    description: 'Stiffness along the travel.',
    unit: 'N/mm',
    minimum: 0,
    maximum: 1e6,
    example: 8.1,
  })
  stiffnessNPerMm: number;

  @NumberField({
    description: 'Pressure of the positive chamber, gauge.',
    unit: 'psi',
    minimum: -100,
    maximum: 1e5,
    example: 104,
  })
  positivePressurePsi: number;
}

export class CurveDto {
  @PartsField({
    description: 'Evenly spaced from full extension to the end of the stroke.',
    type: () => CurvePointDto,
    maxItems: MOST_POINTS,
  })
  points: CurvePointDto[];

  @NumberField({
    description: 'Progression: force at 95 % of the stroke over force at 50 %.',
    unit: '1',
    minimum: 0,
    maximum: 1e6,
    example: 2.4,
  })
  progression: number;

  @NumberField({
    description: 'Energy that it takes to full travel.',
    unit: 'J',
    minimum: 0,
    maximum: 1e6,
    example: 145,
  })
  energyToFullTravelJ: number;
}

export class CurvesAnswerDto extends EngineAnswerDto {
  @PartField({ description: 'Settled: pressed slowly, isothermal.', type: () => CurveDto })
  settled: CurveDto;

  @PartField({
    description: 'Fast: in a hit so short that no heat passes, adiabatic from full extension.',
    type: () => CurveDto,
  })
  fast: CurveDto;
}
