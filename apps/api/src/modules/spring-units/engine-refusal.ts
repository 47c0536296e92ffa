import { SpringInputError } from '@loamledger/spring';
import { InvalidField } from '../../platform/errors/refusal.js';
import { PARAMETER_FIELDS, PARAMETER_NAMES } from './unit-parameters.js';

/** The field of a message that fills an argument of the spring engine. */
interface EngineField {
  /** Path in the message; each `#` stands for an index, in the order of those in the argument. */
  readonly field: string;
  /** Unit of the field, empty where it has none. */
  readonly unit: string;
  readonly fromSi: (value: number) => number;
}

/** Fields by the engine's name of the argument, its indices left out: `rows[].shockTravel`. */
export type EngineFields = Readonly<Record<string, EngineField>>;

/** Enough to tell a value from the bound it breaks. */
const SHOWN_DIGITS = 6;
const NUMBER = /(?<![\w.])[-−]?\d+(?:\.\d+)?(?:e[-+]?\d+)?/gi;

/** The fields of a unit's figures, under `prefix` in the message. */
export function unitFields(prefix: string): EngineFields {
  const entries = PARAMETER_NAMES.map((name) => {
    const { argument, unit, fromSi } = PARAMETER_FIELDS[name];
    return [argument, { field: `${prefix}${name}`, unit, fromSi }] as const;
  });
  return Object.fromEntries(entries);
}

/**
 * Does what asks the engine; what the engine refuses is refused here for the field that a person entered, with what
 * is allowed in the unit of that field.
 * @throws InvalidField
 */
export function asking<Answer>(code: string, fields: EngineFields, work: () => Answer): Answer {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof SpringInputError)) throw error;
    throw fieldRefusal(code, fields, error);
  }
}

function fieldRefusal(code: string, fields: EngineFields, error: SpringInputError): InvalidField {
  const { argument, value, unit, allowed } = error;
  const known = fields[argument.replace(/\[\d+\]/g, '[]')];
  if (!known) return new InvalidField(code, argument, value, `${allowed} ${unit}`.trim());
  const indices = [...argument.matchAll(/\[(\d+)\]/g)].map(([, index]) => index ?? '');
  const field = known.field.replace(/#/g, () => indices.shift() ?? '#');
  const shown = (si: number) => Number(known.fromSi(si).toPrecision(SHOWN_DIGITS));
  const range = allowed.replace(NUMBER, (bound) => String(shown(Number(bound))));
  const given = typeof value === 'number' ? shown(value) : value;
  return new InvalidField(code, field, given, `${range} ${known.unit}`.trim());
}
