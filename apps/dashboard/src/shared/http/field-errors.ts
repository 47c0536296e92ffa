import { inChosenUnits } from '../format/sentences.js';
import { ApiProblem, type RefusedField } from './problem.js';

/** Refused fields as a form shows them: path to message. */
export const allowedTexts = (fields: readonly RefusedField[]): Record<string, string> =>
  Object.fromEntries(fields.map(({ field, allowed }) => [field, `Must be ${inChosenUnits(allowed)}`]));

/** The unit at the end of a field's name. */
const UNIT = /(?<=[a-z])(Psi|Mm2|Mm|Ml|Kg|Pct|Deg|NsPerM|MPerS|Ids?|[CMNSH])(?=\.|$)/g;

/** A field of the API as a person says it: `fork.pressurePsi` is the fork pressure. */
export const fieldInWords = (field: string): string =>
  field
    .replaceAll(UNIT, '')
    .replaceAll(/\.(\d+)/g, (_, index: string) => ` ${Number(index) + 1}`)
    .replaceAll('.', ' ')
    .replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** What the API refuses, with its fields in words. */
export const refusalInWords = ({ message, fields }: ApiProblem): string =>
  fields.reduce((words, { field }) => words.replaceAll(field, fieldInWords(field)), message);

/** The fields that an error says were refused. */
export const fieldErrors = (error: unknown): Record<string, string> =>
  error instanceof ApiProblem ? allowedTexts(error.fields) : {};
