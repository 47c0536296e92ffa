import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { map, type Observable } from 'rxjs';

/** Gives an answer that carries a version its ETag, and answers 304 to who has that version already. */
@Injectable()
export class EntityTagInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler<unknown>): Observable<unknown> {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    return next.handle().pipe(
      map((answer) => {
        const tag = entityTag(answer);
        if (tag === undefined) return answer;
        reply.header('etag', tag);
        if (request.method !== 'GET' || request.headers['if-none-match'] !== tag) return answer;
        reply.status(304);
        return undefined;
      }),
    );
  }
}

function entityTag(answer: unknown): string | undefined {
  if (typeof answer !== 'object' || answer === null || !('version' in answer)) return undefined;
  const { version } = answer;
  return typeof version === 'number' || typeof version === 'string' ? `"${version}"` : undefined;
}
