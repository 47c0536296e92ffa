import { Catch, HttpException, Logger, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Refusal, type FieldProblem, type RefusalKind } from './refusal.js';
import { errorForLog } from '../operations/error-for-log.js';
import { databaseRefusal } from './database-errors.js';

/** RFC 9457 problem details, the one shape of every error. */
interface Problem {
  type: string;
  title: string;
  status: number;
  detail: string;
  code: string;
  requestId: string;
  errors: readonly FieldProblem[];
}

const STATUS: Readonly<Record<RefusalKind, { status: number; title: string }>> = {
  malformed: { status: 400, title: 'The request cannot be read' },
  unauthenticated: { status: 401, title: 'Sign in first' },
  forbidden: { status: 403, title: 'Not allowed in this role' },
  'not-found': { status: 404, title: 'Not found' },
  conflict: { status: 409, title: 'It conflicts with what is stored' },
  stale: { status: 412, title: 'It was changed by somebody else' },
  invalid: { status: 422, title: 'Some fields are not allowed' },
  'precondition-required': { status: 428, title: 'If-Match is required' },
  'too-many-requests': { status: 429, title: 'Too many tries' },
  unavailable: { status: 503, title: 'Not now' },
};
const RETRY_AFTER_SECONDS = 2;
const SERVER_ERROR = 500;
const UNAVAILABLE = 503;

/** Turns every error into problem details. Only what nobody expected is logged, once, with the caller's request id. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly logger = new Logger(ProblemFilter.name);

  catch(error: unknown, host: ArgumentsHost): void {
    const request = host.switchToHttp().getRequest<FastifyRequest>();
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const problem = this.problemOf(error, request.id);
    const wait = waitAfter(error) ?? (problem.status === UNAVAILABLE ? RETRY_AFTER_SECONDS : undefined);
    if (wait !== undefined) reply.header('retry-after', String(wait));
    reply.status(problem.status).type('application/problem+json').send(problem);
  }

  private problemOf(error: unknown, requestId: string): Problem {
    const refusal = error instanceof Refusal ? error : databaseRefusal(error);
    if (refusal instanceof Refusal) {
      const { status, title } = STATUS[refusal.kind];
      return problem(status, title, refusal.message, refusal.code, requestId, refusal.fields);
    }
    if (refusal === 'unavailable') {
      return problem(
        UNAVAILABLE,
        'The database is away',
        'Try again in a moment.',
        'database.unavailable',
        requestId,
      );
    }
    const status = statusOf(error);
    if (status < SERVER_ERROR) {
      return problem(
        status,
        'The request cannot be served',
        (error as Error).message,
        'request.refused',
        requestId,
      );
    }
    this.logger.error('unexpected', { requestId, ...errorForLog(error) });
    return problem(
      SERVER_ERROR,
      'Something went wrong on our side',
      `It is logged under ${requestId}.`,
      'unexpected',
      requestId,
    );
  }
}

/** Seconds after which the caller may try again, where the refusal says so. */
const waitAfter = (error: unknown): number | undefined =>
  error instanceof Refusal ? error.retryAfterSeconds : undefined;

/** The status that the framework itself (unknown route, body too large, unreadable JSON) asks for. */
function statusOf(error: unknown): number {
  if (error instanceof HttpException) return error.getStatus();
  const status = (error as { statusCode?: unknown } | null)?.statusCode;
  return typeof status === 'number' && status >= 400 && status < SERVER_ERROR ? status : SERVER_ERROR;
}

function problem(
  status: number,
  title: string,
  detail: string,
  code: string,
  requestId: string,
  errors: readonly FieldProblem[] = [],
): Problem {
  return { type: `urn:loamledger:problem:${code}`, title, status, detail, code, requestId, errors };
}
