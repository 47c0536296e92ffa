import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import { map, type Observable } from 'rxjs';

/** Far more than anything here is known to, and few enough to hide the last bits of a conversion. */
const SIGNIFICANT_DIGITS = 12;

/** Answers 18 where a conversion there and back has left 18.000000000000014. */
@Injectable()
export class TidyNumbersInterceptor implements NestInterceptor {
  intercept(_: ExecutionContext, next: CallHandler<unknown>): Observable<unknown> {
    return next.handle().pipe(map(tidy));
  }
}

function tidy(value: unknown): unknown {
  if (typeof value === 'number') {
    return Number.isInteger(value) ? value : Number(value.toPrecision(SIGNIFICANT_DIGITS));
  }
  if (Array.isArray(value)) return value.map(tidy);
  if (typeof value !== 'object' || value === null || !isPlain(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, tidy(inner)]));
}

const isPlain = (value: object): boolean => Object.getPrototypeOf(value) === Object.prototype;
