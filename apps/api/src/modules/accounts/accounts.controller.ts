import { Body, Controller, Get, Ip, Post, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { AnyAccount, Public } from '../../platform/http/access.js';
import { Account } from '../../platform/http/scope.js';
import { AccountDto, CredentialsDto, JoinDto, SignInLinkTokenDto, SignUpDto } from './accounts.dto.js';
import { AccountsService } from './accounts.service.js';
import { SignInAnswer } from './sign-in-answer.js';

@ApiTags('accounts')
@Controller()
export class AccountsController {
  constructor(
    private readonly accounts: AccountsService,
    private readonly signInAnswer: SignInAnswer,
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
    return this.signInAnswer.give(await this.accounts.signUp(input, address), reply);
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
    return this.signInAnswer.give(await this.accounts.signIn(input, address), reply);
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
    return this.signInAnswer.give(await this.accounts.join(input, address), reply);
  }

  @Public()
  @Post('sign-ins/by-link')
  @ApiOperation({ summary: 'Sign in by a single-use link; the answer sets an http-only cookie.' })
  @ApiCreatedResponse({ type: AccountDto })
  async signInByLink(
    @Body() input: SignInLinkTokenDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.signInAnswer.give(await this.accounts.signInByLink(input), reply);
  }

  @AnyAccount()
  @Get('accounts/current')
  @ApiOperation({ summary: 'Who is signed in, and in which teams.' })
  @ApiOkResponse({ type: AccountDto })
  current(@Account() accountId: string): Promise<AccountDto> {
    return this.accounts.describe(accountId);
  }
}
