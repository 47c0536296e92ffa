import { Inject, Injectable } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Config } from '../../config/config.js';
import { CONFIG } from '../../config/config.token.js';
import { signInCookieName } from '../../platform/security/sign-in-cookie-name.js';
import type { NewSignIn } from './sign-ins.service.js';

/** The cookie that holds the token of a sign-in: given, read and taken away under one name and with one set of flags. */
@Injectable()
export class SignInCookie {
  private readonly name: string;
  private readonly flags: { path: '/'; httpOnly: true; sameSite: 'strict'; secure: boolean };

  constructor(@Inject(CONFIG) { secureCookies }: Config) {
    this.name = signInCookieName(secureCookies);
    this.flags = {
      path: '/',
      httpOnly: true,
      // The cookie goes with no request that another site makes: one of two guards against forged requests.
      sameSite: 'strict',
      secure: secureCookies,
    };
  }

  /** The token that the browser sends, if it has one. */
  tokenOf({ cookies }: FastifyRequest): string | undefined {
    return cookies[this.name] || undefined;
  }

  give(reply: FastifyReply, { token, expiresAt }: NewSignIn): void {
    reply.setCookie(this.name, token, { ...this.flags, expires: expiresAt });
  }

  /** With the flags that it was given with: a browser would not hear of its end otherwise. */
  takeAway(reply: FastifyReply): void {
    reply.clearCookie(this.name, this.flags);
  }
}
