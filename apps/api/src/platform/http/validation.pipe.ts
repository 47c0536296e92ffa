import { ValidationPipe, type ValidationError } from '@nestjs/common';
import { plainToInstance } from 'class-transformer';
import { validateSync } from 'class-validator';
import { Refusal, type FieldProblem } from '../errors/refusal.js';

/** More would help nobody, and a hostile body could ask for millions. */
const MAX_REPORTED_FIELDS = 100;
const MAX_ECHO_LENGTH = 100;

/** Unknown fields are refused, not dropped. */
const CHECKS = {
  whitelist: true,
  forbidNonWhitelisted: true,
  forbidUnknownValues: true,
  validationError: { target: false },
};

/** Checks every message against its DTO class. */
export const validationPipe = new ValidationPipe({
  ...CHECKS,
  transform: true,
  exceptionFactory: (errors) => {
    const fields = flatten(errors, '').slice(0, MAX_REPORTED_FIELDS);
    const summary = fields.map(({ field, allowed }) => `${field} must be ${allowed}`).join('; ');
    return new Refusal('request.invalid', 'invalid', `${summary}.`, fields);
  },
});

/** The message that a request's body would be taken for, and what is wrong with it: for data that comes otherwise. */
export function checkedMessage<Message extends object>(
  type: new () => Message,
  plain: object,
): { message: Message; problems: readonly FieldProblem[] } {
  const message = plainToInstance(type, plain);
  return { message, problems: problemsOf(message) };
}

/** What is wrong with a message. */
export const problemsOf = (message: object): readonly FieldProblem[] =>
  flatten(validateSync(message, CHECKS), '');

function flatten(errors: readonly ValidationError[], path: string): FieldProblem[] {
  return errors.flatMap((error) => {
    const field = path ? `${path}.${error.property}` : error.property;
    const own = error.constraints ? [{ field, given: echo(error.value), allowed: allowedOf(error) }] : [];
    return [...own, ...flatten(error.children ?? [], field)];
  });
}

function allowedOf(error: ValidationError): string {
  if (error.constraints?.['whitelistValidation']) return 'absent: there is no such field';
  const contexts = Object.values(error.contexts ?? {}) as { allowed?: string }[];
  return (
    contexts.find((context) => context.allowed)?.allowed ?? Object.values(error.constraints ?? {}).join(', ')
  );
}

/** What was given, cut so that an error never grows with its cause. */
export function echo(value: unknown): unknown {
  if (typeof value === 'string') return value.slice(0, MAX_ECHO_LENGTH);
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return value;
  if (value === undefined) return null;
  return (JSON.stringify(value) ?? '').slice(0, MAX_ECHO_LENGTH);
}
