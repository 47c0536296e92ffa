import {
  ChoiceField,
  IdField,
  NumberField,
  PartField,
  PartsField,
  TextField,
  TextsField,
} from '../../platform/http/fields.js';
import { EvidenceDto, HitForecastDto } from '../demand/demand.dto.js';
import { AlternativeDto, EvaluatedFillDto } from './fill.dto.js';
import { NEXT_RUN_KINDS, type NextRunKind } from './sharpen.js';
import { WISH_SOURCES, type WishSource } from './wishes.js';

const per = { unit: '%', minimum: 0, maximum: 100 };
const share = { unit: '% of time', minimum: -100, maximum: 100 };
const mm = { unit: 'mm', minimum: 0, maximum: 300 };
const height = { unit: 'm', minimum: 0, maximum: 100 };
const count = { unit: '1', integer: true, minimum: 0, maximum: 1e9 };
const clicks = { unit: 'clicks from closed', integer: true, minimum: 0, maximum: 100, nullable: true };

export class AssumedInputDto {
  @ChoiceField({ description: 'Whose figure it is.', choices: ['spring unit', 'bike', 'rider'] })
  of: 'spring unit' | 'bike' | 'rider';

  @IdField({ description: 'The unit, bike or rider: where to change it.' })
  id: string;

  @TextField({ description: 'Field with its unit.', maxLength: 60, example: 'negativeVolumeMl' })
  field: string;

  @NumberField({
    description: 'The assumed value, in the unit of the field.',
    unit: '1',
    minimum: -1e9,
    maximum: 1e9,
    example: 31.7,
  })
  value: number;
}

/** What is wanted of the end, and whose wish it is. */
export class WantedDto {
  @NumberField({ ...mm, description: 'Travel wanted to be left at the 95th-percentile hit.', example: 11 })
  reserveMm: number;

  @ChoiceField({ description: 'Whose wish the reserve is.', choices: WISH_SOURCES })
  reserveSource: WishSource;

  @TextField({
    description: 'The same in words.',
    maxLength: 300,
    example: 'Learned from what this rider has kept: 4 decisions.',
  })
  reserveMessage: string;

  @NumberField({ ...per, description: 'Least sag wanted, of the stroke.', example: 15 })
  sagLowPct: number;

  @NumberField({ ...per, description: 'Most sag wanted, of the stroke.', example: 20 })
  sagHighPct: number;

  @ChoiceField({ description: 'Whose wish the sag is.', choices: WISH_SOURCES })
  sagSource: WishSource;

  @TextField({ description: 'The same in words.', maxLength: 300, example: 'The usual band.' })
  sagMessage: string;

  @NumberField({
    ...mm,
    description: 'Travel under braking that should not be exceeded; null: nothing was kept that says.',
    example: 74,
    nullable: true,
  })
  brakingTravelMm: number | null;
}

/** Clicks to start from. */
export class ClicksDto {
  @ChoiceField({
    description:
      "Whose they are: of the nearest set-up that was kept on this bike, or of the one in it 'now'.",
    choices: ['kept', 'now'],
  })
  from: 'kept' | 'now';

  @IdField({ description: 'That set-up.' })
  setupId: string;

  @NumberField({ ...clicks, description: 'Rebound; null: not recorded.', example: 8 })
  reboundClicks: number | null;

  @NumberField({ ...clicks, description: 'Compression; null: not recorded.', example: 12 })
  compressionClicks: number | null;
}

/** Two set-ups of the bike that a closed test plan on this track told apart on time. Not taken into the baseline. */
export class TimeLineDto {
  @IdField({ description: 'The test plan.' })
  planId: string;

  @TextField({ description: 'Its name.', maxLength: 200, example: 'One spacer more' })
  planName: string;

  @TextField({
    description: 'What it found, in a sentence.',
    maxLength: 500,
    example: '66 psi with 2 spacers was 1.8 % faster than 68 psi with 1 (0.6 to 3.0 %).',
  })
  sentence: string;

  @NumberField({ ...share, description: 'Time gained by the faster.', example: 1.8 })
  gainPct: number;

  @NumberField({ ...share, description: 'Lower end of the interval.', example: 0.6 })
  gainLowPct: number;

  @NumberField({ ...share, description: 'Upper end of the interval.', example: 3 })
  gainHighPct: number;

  @PartField({ description: 'The faster set-up.', type: () => EvaluatedFillDto })
  faster: EvaluatedFillDto;

  @PartField({ description: 'The slower set-up.', type: () => EvaluatedFillDto })
  slower: EvaluatedFillDto;

  @PartField({
    description: 'The set-up that meets sag and risk and rides most like the faster; null where none does.',
    type: () => EvaluatedFillDto,
    nullable: true,
  })
  towards: EvaluatedFillDto | null;
}

/** What a choice of next runs would tell. */
export class NextRunsDto {
  @ChoiceField({ description: 'Who rides where.', choices: NEXT_RUN_KINDS })
  kind: NextRunKind;

  @NumberField({ ...height, description: 'Expected lower end of the 95th-percentile hit, 90 %.', example: 1 })
  lowM: number;

  @NumberField({
    ...height,
    description: 'Expected upper end of the 95th-percentile hit, 90 %.',
    example: 1.4,
  })
  highM: number;
}

/** What would sharpen the forecast. */
export class SharpenDto {
  @TextField({
    description: 'What would sharpen it most, in a sentence.',
    maxLength: 500,
    example: 'Two runs by this rider here would narrow the 95 % hit from 0.90–1.60 m to 1.00–1.40 m.',
  })
  sentence: string;

  @NumberField({
    ...height,
    description: 'Lower end of the 95th-percentile hit as it is known now, 90 %.',
    example: 0.9,
  })
  lowM: number;

  @NumberField({
    ...height,
    description: 'Upper end of the 95th-percentile hit as it is known now, 90 %.',
    example: 1.6,
  })
  highM: number;

  @NumberField({ ...count, description: 'Runs that each choice is counted with.', example: 2 })
  runs: number;

  @PartsField({
    description: 'The choices, the most telling first.',
    type: () => NextRunsDto,
    maxItems: 10,
  })
  options: NextRunsDto[];
}

export class EndBaselineDto {
  @ChoiceField({
    description: 'Whether a set-up is recommended.',
    choices: ['recommended', 'not feasible', 'no limits'],
  })
  status: 'recommended' | 'not feasible' | 'no limits';

  @TextField({ description: 'The answer in a sentence.', maxLength: 1_000, example: '68 psi and 3 spacers.' })
  message: string;

  @TextsField({
    description: 'Why.',
    maxItems: 20,
    maxLength: 1_000,
    example: ['12 candidates met every demand.'],
  })
  reasons: string[];

  @NumberField({ description: 'Stroke of the unit.', unit: 'mm', minimum: 20, maximum: 300, example: 170 })
  strokeMm: number;

  @NumberField({
    description: 'Travel at which the bumper begins.',
    unit: 'mm',
    minimum: 0,
    maximum: 300,
    example: 162,
  })
  bumperStartMm: number;

  @PartField({ description: 'The forecast of hits.', type: () => HitForecastDto })
  forecast: HitForecastDto;

  @PartField({ description: 'What the forecast rests on.', type: () => EvidenceDto })
  evidence: EvidenceDto;

  @PartField({
    description: 'What is wanted, and whose wish it is; null: stored before it was.',
    type: () => WantedDto,
    nullable: true,
  })
  wanted: WantedDto | null;

  @PartField({ description: 'The set-up now; null for none.', type: () => EvaluatedFillDto, nullable: true })
  current: EvaluatedFillDto | null;

  @PartField({
    description: 'The recommended set-up; null where there is none.',
    type: () => EvaluatedFillDto,
    nullable: true,
  })
  recommended: EvaluatedFillDto | null;

  @PartField({
    description: 'Where nothing is feasible: what would come nearest.',
    type: () => EvaluatedFillDto,
    nullable: true,
  })
  nearest: EvaluatedFillDto | null;

  @TextsField({ description: 'Demands that cannot be met.', maxItems: 5, maxLength: 40, example: [] })
  unmet: string[];

  @PartsField({
    description: 'Set-ups to ride one after another on the way; the last is the recommended one.',
    type: () => EvaluatedFillDto,
    maxItems: 50,
  })
  steps: EvaluatedFillDto[];

  @PartsField({
    description: 'Neighbours of the recommended set-up.',
    type: () => AlternativeDto,
    maxItems: 4,
  })
  alternatives: AlternativeDto[];

  @ChoiceField({
    description: 'What the changed spring rate asks of the rebound, against the clicks that are named.',
    choices: ['leave', 'try slower', 'try faster'],
  })
  rebound: 'leave' | 'try slower' | 'try faster';

  @PartField({
    description: 'Clicks to start from; null where nobody has recorded any, and without a recommendation.',
    type: () => ClicksDto,
    nullable: true,
  })
  clicks: ClicksDto | null;

  @PartsField({
    description:
      'What closed test plans here told apart on time. It is not taken into the recommended set-up.',
    type: () => TimeLineDto,
    maxItems: 100,
  })
  time: TimeLineDto[];

  @PartField({
    description: 'What would sharpen the forecast; null: stored before it was.',
    type: () => SharpenDto,
    nullable: true,
  })
  sharpen: SharpenDto | null;

  @PartsField({
    description: 'Every assumed figure behind the answer.',
    type: () => AssumedInputDto,
    maxItems: 40,
  })
  assumed: AssumedInputDto[];
}
