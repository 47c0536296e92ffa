import { Injectable } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import type { AccountDto } from './accounts.dto.js';
import type { SignIn } from './accounts.service.js';
import { SignInCookie } from './sign-in-cookie.js';
import { SignInsService } from './sign-ins.service.js';

/** How a new sign-in is answered, by whichever way it came to be. */
@Injectable()
export class SignInAnswer {
  constructor(
    private readonly signIns: SignInsService,
    private readonly cookie: SignInCookie,
  ) {}

  /** Gives the browser the cookie of the new sign-in; the one that it had before, if any, ends. */
  async give(signIn: SignIn, reply: FastifyReply): Promise<AccountDto> {
    await this.signIns.end(this.cookie.tokenOf(reply.request));
    this.cookie.give(reply, signIn);
    return signIn.account;
  }
}
