import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Refusal } from '../errors/refusal.js';

/** Somebody else changed the thing since the caller read it. */
export class StaleVersion extends Refusal {
  constructor(thing: string) {
    super(
      'precondition.stale',
      'stale',
      `The ${thing} was changed since you read it. Read it again, then decide.`,
    );
  }
}

/** The version in the `If-Match` header, which every change of a changeable thing must carry. */
export const IfMatch = createParamDecorator((_: unknown, context: ExecutionContext): number => {
  const header = context.switchToHttp().getRequest<FastifyRequest>().headers['if-match'];
  if (!header) {
    throw new Refusal(
      'precondition.required',
      'precondition-required',
      'Send the ETag of the version you read as If-Match.',
    );
  }
  // What follows the version in an ETag tells answers apart, not what is stored.
  const version = /^(?:W\/)?"(\d{1,9})(?:\.[\w-]{1,64})?"$/.exec(header)?.[1];
  if (version === undefined) throw new StaleVersion('resource');
  return Number(version);
});
