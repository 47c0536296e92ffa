import { parseNumber } from '../../format/parse.js';

/** One field of a form, described so that a form is a list and its texts stand in one place. */
export interface FieldSpec {
  /** Path in the message to the API, which names refused fields by it: `fork.sagLowPct`. */
  readonly name: string;
  readonly label: string;
  readonly kind: 'text' | 'long' | 'date' | 'number' | 'whole' | 'choice';
  readonly unit?: string;
  readonly hint?: string;
  readonly required?: boolean;
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
}

/** The values of a form: text everywhere, nested as the message is. */
export interface FormValues {
  [name: string]: string | FormValues;
}

function textAt(values: FormValues, path: string): string {
  const found = path
    .split('.')
    .reduce<string | FormValues | undefined>(
      (inner, name) => (typeof inner === 'object' ? inner[name] : undefined),
      values,
    );
  return typeof found === 'string' ? found : '';
}

/**
 * What the form itself can tell before the API is asked: a figure that is none, a needed field left empty.
 * Ranges are the API's to judge.
 */
export function obviousErrors(fields: readonly FieldSpec[], values: FormValues): Record<string, string> {
  return Object.fromEntries(
    fields.flatMap(({ name, kind, required }) => {
      const text = textAt(values, name);
      if (required === true && text.trim() === '') return [[name, 'Needed']];
      const isFigure = kind === 'number' || kind === 'whole';
      return isFigure && Number.isNaN(parseNumber(text)) ? [[name, 'Must be a number']] : [];
    }),
  );
}
