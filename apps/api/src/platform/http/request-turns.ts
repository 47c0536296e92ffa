import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Config } from '../../config/config.js';
import { CONFIG } from '../../config/config.token.js';
import { Refusal } from '../errors/refusal.js';
import { Gauges } from '../operations/gauges.js';
import { networkOf } from '../security/network-of.js';
import { whenServed } from './served.js';
import { Turns } from './turns.js';

/** What waits of one account, as a multiple of what is done for it at a time: two phones with a full day of kept runs. */
const WAITING_FOR_EACH = 10;

class TooManyRequests extends Refusal {
  override readonly retryAfterSeconds = 1;

  constructor(most: number) {
    super(
      'requests.too-many',
      'too-many-requests',
      `At most ${most} requests of one account wait for their turn. Wait for answers before you send more.`,
    );
  }
}

/**
 * Turns of requests: so many of one account, or of strangers at one place, are served at a time, and others of theirs
 * wait. However much one of them asks, others wait for a few requests and not for all. How often somebody may ask is not
 * limited: who waits for answers gets as many as there is time for.
 */
@Injectable()
export class RequestTurns {
  private readonly turns: Turns;
  private readonly mostWaiting: number;

  constructor(
    @Inject(CONFIG) private readonly config: Pick<Config, 'requestsAtOnce'>,
    gauges: Gauges,
  ) {
    this.mostWaiting = config.requestsAtOnce * WAITING_FOR_EACH;
    this.turns = new Turns(config.requestsAtOnce, this.mostWaiting);
    gauges.add({
      name: 'loamledger_requests_waiting',
      help: 'Requests that wait for their account to have fewer at a time.',
      read: () => this.turns.waiting,
    });
  }

  /**
   * Waits for the account's turn; it ends when the request has been served.
   * @returns whether it had to wait: what was known of the account before may have changed.
   * @throws TooManyRequests
   */
  ofAccount(accountId: string, request: FastifyRequest, reply: FastifyReply): Promise<boolean> {
    return this.take(accountId, request, reply);
  }

  /** The same for strangers, who are known by the place they ask from. @throws TooManyRequests */
  ofStranger(request: FastifyRequest, reply: FastifyReply): Promise<boolean> {
    return this.take(`network ${networkOf(request.ip)}`, request, reply);
  }

  /** Requests that are being served now, as far as they are counted. */
  get atWork(): number {
    return this.turns.atWork;
  }

  get waiting(): number {
    return this.turns.waiting;
  }

  private async take(owner: string, request: FastifyRequest, reply: FastifyReply): Promise<boolean> {
    if (this.config.requestsAtOnce === 0) return false;
    const turn = this.turns.begin(owner);
    if (turn === 'full') throw new TooManyRequests(this.mostWaiting);
    if (turn !== 'now') await turn;
    whenServed(request, reply, () => this.turns.end(owner));
    return turn !== 'now';
  }
}
