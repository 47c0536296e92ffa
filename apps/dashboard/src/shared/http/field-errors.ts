import { inChosenUnits } from '../format/sentences.js';
import { ApiProblem, type RefusedField } from './problem.js';

/** Refused fields as a form shows them: path to message. */
export const allowedTexts = (fields: readonly RefusedField[]): Record<string, string> =>
  Object.fromEntries(fields.map(({ field, allowed }) => [field, `Must be ${inChosenUnits(allowed)}`]));

/** The fields that an error says were refused. */
export const fieldErrors = (error: unknown): Record<string, string> =>
  error instanceof ApiProblem ? allowedTexts(error.fields) : {};
