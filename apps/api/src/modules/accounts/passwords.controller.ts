import { Body, Controller, Get, HttpCode, Ip, Post, Req, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AnyAccount, Public } from '../../platform/http/access.js';
import { Account } from '../../platform/http/scope.js';
import { AccountDto } from './accounts.dto.js';
import { NewPasswordDto, PasswordChangeDto, TokensInForceDto } from './passwords.dto.js';
import { PasswordsService } from './passwords.service.js';
import { SignInAnswer } from './sign-in-answer.js';
import { SignInCookie } from './sign-in-cookie.js';

@ApiTags('accounts')
@Controller()
export class PasswordsController {
  constructor(
    private readonly passwords: PasswordsService,
    private readonly signInAnswer: SignInAnswer,
    private readonly cookie: SignInCookie,
  ) {}

  @AnyAccount()
  @Get('accounts/current/tokens')
  @ApiOperation({ summary: 'How many API tokens act for the account, by team.' })
  @ApiOkResponse({ type: TokensInForceDto })
  tokens(@Account() accountId: string): Promise<TokensInForceDto> {
    return this.passwords.tokens(accountId);
  }

  @AnyAccount()
  @Post('passwords/change')
  @HttpCode(200)
  @ApiOperation({
    summary:
      'Change the password of the account; every other sign-in of it ends, its API tokens only where asked. ' +
      'Answers with the tokens that stay.',
  })
  @ApiOkResponse({ type: TokensInForceDto })
  change(
    @Account() accountId: string,
    @Body() input: PasswordChangeDto,
    @Ip() address: string,
    @Req() request: FastifyRequest,
  ): Promise<TokensInForceDto> {
    return this.passwords.change(accountId, input, address, this.cookie.tokenOf(request));
  }

  @Public()
  @Post('passwords/by-link')
  @ApiOperation({ summary: 'Set a forgotten password by a single-use link, end all sign-ins, and sign in.' })
  @ApiCreatedResponse({ type: AccountDto })
  async setByLink(
    @Body() input: NewPasswordDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AccountDto> {
    return this.signInAnswer.give(await this.passwords.setByLink(input), reply);
  }
}
