import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { tap, type Observable } from 'rxjs';

/** Gives a page of a list the `Link: <…>; rel="next"` header of RFC 8288. */
@Injectable()
export class PageLinkInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler<unknown>): Observable<unknown> {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    return next.handle().pipe(
      tap((answer) => {
        if (typeof answer !== 'object' || answer === null || !('nextCursor' in answer)) return;
        if (typeof answer.nextCursor !== 'string') return;
        const url = new URL(request.url, 'http://host');
        url.searchParams.set('cursor', answer.nextCursor);
        reply.header('link', `<${url.pathname}${url.search}>; rel="next"`);
      }),
    );
  }
}
