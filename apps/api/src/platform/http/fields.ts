import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { Transform, Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  IsArray,
  IsBoolean,
  IsEmail,
  IsIn,
  IsInt,
  IsNumber,
  IsObject,
  IsOptional,
  IsString,
  IsUUID,
  Matches,
  Max,
  MaxLength,
  Min,
  MinLength,
  ValidateIf,
  ValidateNested,
} from 'class-validator';

/*
 * One decorator per kind of field: it is the check of the input, the type in the OpenAPI document and the
 * documentation at once, so that the three cannot drift apart. Every check carries its allowed range in words
 * as `context`, which the validation pipe hands to the caller.
 */

interface Common {
  readonly description: string;
  /** The field may be missing in a request. */
  readonly optional?: boolean;
  /** The field may be null: known to be absent. */
  readonly nullable?: boolean;
}

interface NumberOptions extends Common {
  /** Unit of the number, `1` where it has none. */
  readonly unit: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly example: number;
  readonly integer?: boolean;
}

/** A finite number with a unit and limits from physics or sense. */
export function NumberField(options: NumberOptions): PropertyDecorator {
  const { unit, minimum, maximum, example, description } = options;
  const allowed = `${options.integer ? 'a whole number' : 'a number'} from ${minimum} to ${maximum}${unit === '1' ? '' : ` ${unit}`}`;
  const check = { context: { allowed } };
  return applyDecorators(
    options.integer ? IsInt(check) : IsNumber({ allowNaN: false, allowInfinity: false }, check),
    Min(minimum, check),
    Max(maximum, check),
    property(options, {
      type: options.integer ? 'integer' : 'number',
      minimum,
      maximum,
      example,
      description: unit === '1' ? description : `${description} Unit: ${unit}.`,
    }),
  );
}

interface TextOptions extends Common {
  readonly maxLength: number;
  readonly minLength?: number;
  readonly example: string;
  /** Keeps spaces at the ends, as a password needs. */
  readonly untrimmed?: boolean;
}

/**
 * Postgres cannot store U+0000, nor halves of surrogate pairs in JSON; no name or note needs the other control
 * characters, but line breaks and tabs.
 */
export const PRINTABLE = /^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\p{Surrogate}]*$/u;

/** A line or paragraph of text, trimmed unless said otherwise; control characters but line breaks and tabs are refused. */
export function TextField(options: TextOptions): PropertyDecorator {
  const { maxLength, minLength = 1, example, description } = options;
  const check = {
    context: { allowed: `text of ${minLength} to ${maxLength} characters without control characters` },
  };
  return applyDecorators(
    Transform(({ value }: { value: unknown }) =>
      typeof value === 'string' && !options.untrimmed ? value.trim() : value,
    ),
    IsString(check),
    MinLength(minLength, check),
    MaxLength(maxLength, check),
    Matches(PRINTABLE, check),
    property(options, { type: 'string', minLength, maxLength, example, description }),
  );
}

const MAX_EMAIL = 254;
/** Halves of surrogate pairs, which the check of addresses cannot read. */
const HALF_CHARACTERS = /\p{Surrogate}/u;

/** An e-mail address, in small letters and without spaces at its ends. */
export function EmailField(options: Common): PropertyDecorator {
  const check = { context: { allowed: 'an e-mail address' } };
  return applyDecorators(
    Transform(({ value }: { value: unknown }) =>
      typeof value === 'string' && !HALF_CHARACTERS.test(value) ? value.trim().toLowerCase() : [value],
    ),
    IsEmail({}, check),
    MaxLength(MAX_EMAIL, { context: { allowed: `at most ${MAX_EMAIL} characters` } }),
    property(options, {
      type: 'string',
      format: 'email',
      maxLength: MAX_EMAIL,
      example: 'mechanic@team.example',
      description: options.description,
    }),
  );
}

/** One of a fixed set of words. */
export function ChoiceField(
  options: Common & { choices: readonly string[]; example?: string },
): PropertyDecorator {
  const check = { context: { allowed: `one of: ${options.choices.join(', ')}` } };
  return applyDecorators(
    IsIn(options.choices, check),
    property(options, {
      type: 'string',
      enum: [...options.choices],
      example: options.example ?? options.choices[0],
      description: options.description,
    }),
  );
}

/** True or false. */
export function FlagField(options: Common & { example: boolean }): PropertyDecorator {
  return applyDecorators(
    IsBoolean({ context: { allowed: 'true or false' } }),
    property(options, { type: 'boolean', example: options.example, description: options.description }),
  );
}

/** The id of something in the team. */
export function IdField(options: Common): PropertyDecorator {
  return applyDecorators(
    IsUUID(undefined, { context: { allowed: 'a UUID' } }),
    property(options, {
      type: 'string',
      format: 'uuid',
      example: '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e11',
      description: options.description,
    }),
  );
}

/** A list of ids of things in the team. */
export function IdsField(options: Common & { minItems?: number; maxItems: number }): PropertyDecorator {
  const { minItems = 0, maxItems } = options;
  const check = {
    context: { allowed: `a list of ${minItems === 0 ? 'at most' : `${minItems} to`} ${maxItems} UUIDs` },
  };
  return applyDecorators(
    IsArray(check),
    ArrayMinSize(minItems, check),
    ArrayMaxSize(options.maxItems, check),
    IsUUID(undefined, { each: true, ...check }),
    property(options, {
      type: 'array',
      items: { type: 'string', format: 'uuid' },
      ...(minItems > 0 && { minItems }),
      maxItems,
      example: ['01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e11'],
      description: options.description,
    }),
  );
}

/** A day, `2026-05-09`. */
export function DayField(options: Common & { example: string }): PropertyDecorator {
  const check = { context: { allowed: 'a day from 1990-01-01 to 2199-12-31 as YYYY-MM-DD' } };
  return applyDecorators(
    Transform(({ value }: { value: unknown }) => (isRealDay(value) ? value : [value])),
    IsString(check),
    Matches(/^(19[9]\d|2[01]\d\d)-\d\d-\d\d$/, check),
    property(options, {
      type: 'string',
      format: 'date',
      example: options.example,
      description: options.description,
    }),
  );
}

/** A time on the clock of the place, `09:30`. */
export function ClockField(options: Common & { example: string }): PropertyDecorator {
  const pattern = /^([01]\d|2[0-3]):[0-5]\d$/;
  const check = { context: { allowed: 'a time from 00:00 to 23:59 as HH:MM' } };
  return applyDecorators(
    IsString(check),
    Matches(pattern, check),
    property(options, {
      type: 'string',
      pattern: pattern.source,
      example: options.example,
      description: options.description,
    }),
  );
}

/** A moment with its offset, RFC 3339. */
export function MomentField(options: Common & { example: string }): PropertyDecorator {
  const check = { context: { allowed: 'a moment from 1990 to 2199 as in 2026-05-09T10:30:00Z' } };
  return applyDecorators(
    Transform(({ value }: { value: unknown }) => (value == null || isRealMoment(value) ? value : [value])),
    IsString(check),
    Matches(/^(19[9]\d|2[01]\d\d)-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,6})?(Z|[+-]\d\d:\d\d)$/, check),
    property(options, {
      type: 'string',
      format: 'date-time',
      example: options.example,
      description: options.description,
    }),
  );
}

/** A nested message. */
export function PartField(options: Common & { type: () => new () => object }): PropertyDecorator {
  return applyDecorators(
    IsObject({ context: { allowed: 'an object' } }),
    ValidateNested({ context: { allowed: 'an object' } }),
    Type(options.type),
    property(options, { type: options.type, description: options.description }),
  );
}

/** A list of nested messages. */
export function PartsField(
  options: Common & { type: () => new () => object; minItems?: number; maxItems: number },
): PropertyDecorator {
  const { minItems = 0, maxItems } = options;
  const check = {
    context: { allowed: `a list of ${minItems === 0 ? 'at most' : `${minItems} to`} ${maxItems}` },
  };
  return applyDecorators(
    IsArray(check),
    ArrayMinSize(minItems, check),
    ArrayMaxSize(maxItems, check),
    // A list in the list would be taken for a nested message of its own.
    IsObject({ each: true, context: { allowed: 'an object' } }),
    ValidateNested({ each: true, context: { allowed: 'an object' } }),
    Type(options.type),
    property(options, {
      type: options.type,
      isArray: true,
      ...(minItems > 0 && { minItems }),
      maxItems,
      description: options.description,
    }),
  );
}

/** A list of finite numbers of one unit. */
export function NumbersField(
  options: NumberOptions & { minItems: number; maxItems: number },
): PropertyDecorator {
  const { unit, minimum, maximum, minItems, maxItems, example, description, integer } = options;
  const unitText = unit === '1' ? '' : ` ${unit}`;
  const check = {
    context: {
      allowed: `a list of ${minItems} to ${maxItems} ${integer ? 'whole ' : ''}numbers from ${minimum} to ${maximum}${unitText}`,
    },
  };
  const each = { each: true, ...check };
  return applyDecorators(
    IsArray(check),
    ArrayMinSize(minItems, check),
    ArrayMaxSize(maxItems, check),
    integer ? IsInt(each) : IsNumber({ allowNaN: false, allowInfinity: false }, each),
    Min(minimum, each),
    Max(maximum, each),
    property(options, {
      type: 'array',
      items: { type: integer ? 'integer' : 'number', minimum, maximum },
      minItems,
      maxItems,
      example: [example],
      description: unit === '1' ? description : `${description} Unit: ${unit}.`,
    }),
  );
}

/** A list of short texts. */
export function TextsField(
  options: Common & { maxItems: number; maxLength: number; example: readonly string[] },
): PropertyDecorator {
  const check = {
    context: {
      allowed: `a list of at most ${options.maxItems} texts of at most ${options.maxLength} characters without control characters`,
    },
  };
  return applyDecorators(
    IsArray(check),
    ArrayMaxSize(options.maxItems, check),
    IsString({ each: true, ...check }),
    MaxLength(options.maxLength, { each: true, ...check }),
    Matches(PRINTABLE, { each: true, ...check }),
    property(options, {
      type: 'string',
      isArray: true,
      maxItems: options.maxItems,
      example: [...options.example],
      description: options.description,
    }),
  );
}

function property(options: Common, schema: Record<string, unknown>): PropertyDecorator {
  const absence: PropertyDecorator[] = [];
  if (options.nullable) absence.push(ValidateIf((_, value) => value !== null));
  if (options.optional)
    absence.push(options.nullable ? IsOptional() : ValidateIf((_, value) => value !== undefined));
  return applyDecorators(
    ...absence,
    ApiProperty({ ...schema, required: !options.optional, nullable: options.nullable ?? false } as never),
  );
}

// A date that the calendar does not have must not reach the database: the parser would roll it over.
export function isRealDay(value: unknown): boolean {
  if (typeof value !== 'string') return false;
  const day = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(value);
}

export function isRealMoment(value: unknown): boolean {
  return typeof value === 'string' && isRealDay(value.slice(0, 10)) && !Number.isNaN(Date.parse(value));
}
