import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../database/team-database.js';
import { Refusal } from '../errors/refusal.js';
import { networkOf } from './network-of.js';
import { hashToken } from './tokens.js';

/** How often something may be tried at once, and how long one waits before each further try: twice as long each time. */
interface Limit {
  readonly freeTries: number;
  readonly longestDelayS: number;
}
const FIRST_DELAY_S = 1;

/** One who guesses at one account from one address. */
const PERSON: Limit = { freeTries: 5, longestDelayS: 300 };
/** Many accounts from one address: a whole team behind one router must get in. */
const ADDRESS: Limit = { freeTries: 60, longestDelayS: 300 };
/** One account from many addresses; short, so that nobody can lock its owner out. */
const ACCOUNT: Limit = { freeTries: 30, longestDelayS: 30 };
/** New accounts from one address: each costs the service a password hash. */
const SIGN_UPS: Limit = { freeTries: 60, longestDelayS: 300 };

class TooManyTries extends Refusal {
  constructor(override readonly retryAfterSeconds: number) {
    super('sign-in.too-many-tries', 'too-many-requests', `Too many tries. Wait ${retryAfterSeconds} s.`);
  }
}

/** Growing delays for whoever tries too often. Counted in the database, so that they hold for all processes together. */
@Injectable()
export class Throttle {
  constructor(private readonly database: TeamDatabase) {}

  /**
   * Counts a try to sign in, before it is known whether it will fail.
   * @throws TooManyTries while the delay after the tries before is not over.
   */
  async trySignIn(address: string, email: string): Promise<void> {
    const network = networkOf(address);
    await this.take(`person ${network} ${email}`, PERSON);
    await this.take(`address ${network}`, ADDRESS);
    await this.take(`account ${email}`, ACCOUNT);
  }

  /** The try was right: it and the failures before it no longer count, but for what else came from the address. */
  async forgiveSignIn(address: string, email: string): Promise<void> {
    const network = networkOf(address);
    await this.forgive(`person ${network} ${email}`, PERSON.freeTries * 2);
    await this.forgive(`account ${email}`, ACCOUNT.freeTries * 2);
    await this.forgive(`address ${network}`, 1);
  }

  /** @throws TooManyTries while the delay after the sign-ups before is not over. */
  trySignUp(address: string): Promise<void> {
    return this.take(`sign-up ${networkOf(address)}`, SIGN_UPS);
  }

  private async take(key: string, { freeTries, longestDelayS }: Limit): Promise<void> {
    const [row] = await this.database.asStranger((statements) =>
      statements.query<{ wait: number }[]>('select take_try($1, $2, $3, $4) as wait', [
        hashToken(key),
        freeTries,
        FIRST_DELAY_S,
        longestDelayS,
      ]),
    );
    if (row && row.wait > 0) throw new TooManyTries(Math.ceil(row.wait));
  }

  private async forgive(key: string, tries: number): Promise<void> {
    await this.database.asStranger((statements) =>
      statements.query('select forgive_tries($1, $2)', [hashToken(key), tries]),
    );
  }
}
