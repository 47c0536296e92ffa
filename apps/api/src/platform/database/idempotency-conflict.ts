import { Refusal } from '../errors/refusal.js';

export class IdempotencyConflict extends Refusal {
  constructor(key: string) {
    super(
      'idempotency.key-reused',
      'conflict',
      `The Idempotency-Key '${key}' was already used for another request.`,
    );
  }
}
