import { refusalInWords } from '../../../shared/http/field-errors.js';
import { ApiProblem } from '../../../shared/http/problem.js';
import type { Refusal } from './queued-run.js';

/** What came of sending a run once. */
export type SendOutcome =
  | { readonly kind: 'taken' }
  /** The API does not know the session any more. */
  | { readonly kind: 'signed-out' }
  /** Nobody can say whether it arrived: it is sent again, under the same key. */
  | { readonly kind: 'unsure' }
  | { readonly kind: 'refused'; readonly refusal: Refusal };

const UNAUTHENTICATED = 401;
const FIRST_SERVER_ERROR = 500;
/** Answers below 500 that are about the moment, not about the run: timeout, too early, too many requests. */
const LATER = [408, 425, 429];
/** The code of an answer that is no problem document: of a proxy, or of the login page of a public network. */
const NOT_OURS = 'unknown';

/** Reads a failure. Only the API's own refusal of this very run is one; everything else is tried again. */
export function outcomeOf(error: unknown): SendOutcome {
  if (!(error instanceof ApiProblem)) return { kind: 'unsure' };
  const { status, code, title, fields } = error;
  if (code === NOT_OURS || status >= FIRST_SERVER_ERROR || LATER.includes(status)) {
    return { kind: 'unsure' };
  }
  if (status === UNAUTHENTICATED) return { kind: 'signed-out' };
  return { kind: 'refused', refusal: { status, title, detail: refusalInWords(error), fields } };
}
