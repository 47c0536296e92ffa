import { Body, Controller, Delete, Get, HttpCode, Inject, Ip, Post, Req, Res } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CONFIG } from '../../config/config.token.js';
import type { Config } from '../../config/config.js';
import { AnyAccount, Public } from '../../platform/http/access.js';
import { Account } from '../../platform/http/scope.js';
import { AccountDto, CredentialsDto, JoinDto, SignUpDto } from './accounts.dto.js';
import { AccountsService, type SignIn } from './accounts.service.js';
import { SIGN_IN_COOKIE } from './sign-in.guard.js';

@ApiTags('accounts')
@Controller()
export class AccountsController {
  constructor(
    private readonly accounts: AccountsService,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Public()
  @Post('accounts')
  @ApiOperation({ summary: 'Create an account and sign in.' })
  @ApiCreatedResponse({ type: AccountDto })
  async signUp(
    @Body() input: SignUpDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.answer(await this.accounts.signUp(input), reply);
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

  @AnyAccount()
  @Delete('sign-ins/current')
  @HttpCode(204)
  @ApiOperation({ summary: 'Sign out.' })
  @ApiNoContentResponse()
  async signOut(
    @Account() accountId: string,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<void> {
    await this.accounts.signOut(accountId, request.cookies[SIGN_IN_COOKIE] ?? '');
    reply.clearCookie(SIGN_IN_COOKIE, { path: '/' });
  }

  @AnyAccount()
  @Get('accounts/current')
  @ApiOperation({ summary: 'Who is signed in, and in which teams.' })
  @ApiOkResponse({ type: AccountDto })
  current(@Account() accountId: string): Promise<AccountDto> {
    return this.accounts.describe(accountId);
  }

  private answer(signIn: SignIn, reply: FastifyReply): AccountDto {
    reply.setCookie(SIGN_IN_COOKIE, signIn.token, {
      path: '/',
      httpOnly: true,
      // The cookie goes with no request that another site makes: this is the guard against forged requests.
      sameSite: 'strict',
      secure: this.config.secureCookies,
      expires: signIn.expiresAt,
    });
    return signIn.account;
  }
}
