import { Body, Controller, Get, Inject, Ip, Post, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { CONFIG } from '../../config/config.token.js';
import type { Config } from '../../config/config.js';
import { AnyAccount, Public } from '../../platform/http/access.js';
import { Account } from '../../platform/http/scope.js';
import { AccountDto, CredentialsDto, JoinDto, SignInLinkTokenDto, SignUpDto } from './accounts.dto.js';
import { AccountsService, type SignIn } from './accounts.service.js';
import { SIGN_IN_COOKIE } from './sign-in-cookie.js';
import { SignInsService } from './sign-ins.service.js';

@ApiTags('accounts')
@Controller()
export class AccountsController {
  constructor(
    private readonly accounts: AccountsService,
    private readonly signIns: SignInsService,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Public()
  @Post('accounts')
  @ApiOperation({ summary: 'Create an account and sign in.' })
  @ApiCreatedResponse({ type: AccountDto })
  async signUp(
    @Body() input: SignUpDto,
    @Ip() address: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.answer(await this.accounts.signUp(input, address), reply);
  }

  @Public()
  @Post('sign-ins')
  @ApiOperation({ summary: 'Sign in; the answer sets an http-only cookie.' })
  @ApiCreatedResponse({ type: AccountDto })
  async signIn(
    @Body() input: CredentialsDto,
    @Ip() address: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.answer(await this.accounts.signIn(input, address), reply);
  }

  @Public()
  @Post('invitations/accept')
  @ApiOperation({ summary: 'Join a team by a single-use link and sign in.' })
  @ApiCreatedResponse({ type: AccountDto })
  async join(
    @Body() input: JoinDto,
    @Ip() address: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.answer(await this.accounts.join(input, address), reply);
  }

  @Public()
  @Post('sign-ins/by-link')
  @ApiOperation({ summary: 'Sign in by a single-use link; the answer sets an http-only cookie.' })
  @ApiCreatedResponse({ type: AccountDto })
  async signInByLink(
    @Body() input: SignInLinkTokenDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.answer(await this.accounts.signInByLink(input), reply);
  }

  @AnyAccount()
  @Get('accounts/current')
  @ApiOperation({ summary: 'Who is signed in, and in which teams.' })
  @ApiOkResponse({ type: AccountDto })
  current(@Account() accountId: string): Promise<AccountDto> {
    return this.accounts.describe(accountId);
  }

  /** Gives the browser the cookie of the new sign-in; the one that it had before, if any, ends. */
  private async answer(signIn: SignIn, reply: FastifyReply): Promise<AccountDto> {
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
