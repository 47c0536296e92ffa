import { InvalidField } from '../../platform/errors/refusal.js';

/** An answer from the computing thread, or the field that was refused there: errors lose their class on the way. */
export type Computed<Answer> =
  | { readonly answer: Answer }
  | { readonly code: string; readonly field: string; readonly given: unknown; readonly allowed: string };

/** Runs in the computing thread: answers, or tells the field that is refused. */
export function computed<Answer>(work: () => Answer): Computed<Answer> {
  try {
    return { answer: work() };
  } catch (error) {
    const [refused] = error instanceof InvalidField ? error.fields : [];
    if (!(error instanceof InvalidField) || !refused) throw error;
    return { code: error.code, field: refused.field, given: refused.given, allowed: refused.allowed };
  }
}

/** The answer that the computing thread gave. @throws InvalidField for the field that it refused. */
export function answerOrRefuse<Answer>(outcome: Computed<Answer>): Answer {
  if ('answer' in outcome) return outcome.answer;
  throw new InvalidField(outcome.code, outcome.field, outcome.given, outcome.allowed);
}
