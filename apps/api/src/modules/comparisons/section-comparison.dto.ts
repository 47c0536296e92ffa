import type { Verdict } from '@loamledger/evidence';
import { ChoiceField, NumberField, PartsField, TextField, TextsField } from '../../platform/http/fields.js';
import { ComparedDto, VERDICTS } from './comparison-arm.dto.js';

const timeShare = { unit: '% of time', minimum: -100, maximum: 1e6, nullable: true };

/** One arm against the current one on one section. Negative differences are faster. */
export class SectionArmDto extends ComparedDto {
  @ChoiceField({
    description: 'What the times of the section say, with all sections of the track looked at.',
    choices: VERDICTS,
  })
  verdict: Verdict;

  @TextField({
    description: 'The same in words, with the reason.',
    maxLength: 1_000,
    example: "Alone this section would say 'faster'; among 3 sections that may be chance.",
  })
  sentence: string;

  @NumberField({
    description: 'Runs with a time of the section that count.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e5,
    example: 4,
  })
  timedRuns: number;

  @NumberField({ ...timeShare, description: 'Difference of time; null: none could be told.', example: -1.1 })
  differencePct: number | null;

  @NumberField({
    ...timeShare,
    description: 'Lower end of its interval, of this section alone.',
    example: -2.9,
  })
  lowPct: number | null;

  @NumberField({
    ...timeShare,
    description: 'Upper end of its interval, of this section alone.',
    example: 0.7,
  })
  highPct: number | null;
}

/** The comparison of one section of the track. */
export class SectionComparisonDto {
  @TextField({ description: 'The section.', maxLength: 80, example: 'Stairs' })
  section: string;

  @TextsField({
    description: 'What the reader has to know about it.',
    maxItems: 20,
    maxLength: 500,
    example: ['No past sessions: the scatter is judged from these runs alone.'],
  })
  sentences: string[];

  @PartsField({
    description: 'The others against the current one.',
    type: () => SectionArmDto,
    maxItems: 100,
  })
  arms: SectionArmDto[];
}
