import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import type { Config } from '../../config/config.js';
import { CONFIG } from '../../config/config.token.js';
import type { AccountDto } from './accounts.dto.js';
import type { SignIn } from './accounts.service.js';
import { SIGN_IN_COOKIE } from './sign-in-cookie.js';
import { SignInsService } from './sign-ins.service.js';

/** How a new sign-in is answered, by whichever way it came to be. */
@Injectable()
export class SignInAnswer {
  constructor(
    private readonly signIns: SignInsService,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  /** Gives the browser the cookie of the new sign-in; the one that it had before, if any, ends. */
  async give(signIn: SignIn, reply: FastifyReply): Promise<AccountDto> {
    await this.signIns.end(reply.request.cookies[SIGN_IN_COOKIE]);
    reply.setCookie(SIGN_IN_COOKIE, signIn.token, {
      path: '/',
      httpOnly: true,
      // The cookie goes with no request that another site makes: one of two guards against forged requests.
      sameSite: 'strict',
      secure: this.config.secureCookies,
      expires: signIn.expiresAt,
    });
    return signIn.account;
  }
}
