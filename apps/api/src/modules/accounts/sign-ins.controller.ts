import { Controller, Delete, Get, HttpCode, Param, ParseUUIDPipe, Req, Res } from '@nestjs/common';
import { ApiNoContentResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AnyAccount } from '../../platform/http/access.js';
import { Account } from '../../platform/http/scope.js';
import { SignInCookie } from './sign-in-cookie.js';
import { SignInDto } from './sign-ins.dto.js';
import { SignInsService } from './sign-ins.service.js';

@ApiTags('accounts')
@Controller('sign-ins')
export class SignInsController {
  constructor(
    private readonly signIns: SignInsService,
    private readonly cookie: SignInCookie,
  ) {}

  @AnyAccount()
  @Get()
  @ApiOperation({ summary: 'Where the account is signed in.' })
  @ApiOkResponse({ type: SignInDto, isArray: true })
  list(@Account() accountId: string, @Req() request: FastifyRequest): Promise<SignInDto[]> {
    return this.signIns.list(accountId, this.cookie.tokenOf(request));
  }

  @AnyAccount()
  @Delete('current')
  @HttpCode(204)
  @ApiOperation({ summary: 'Sign out.' })
  @ApiNoContentResponse()
  async signOut(
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<void> {
    await this.signIns.end(this.cookie.tokenOf(request));
    this.cookie.takeAway(reply);
  }

  @AnyAccount()
  @Delete(':id')
  @HttpCode(204)
  @ApiOperation({ summary: 'End one of the sign-ins of the account.' })
  @ApiNoContentResponse()
  end(@Account() accountId: string, @Param('id', ParseUUIDPipe) id: string): Promise<void> {
    return this.signIns.endOne(accountId, id);
  }

  @AnyAccount()
  @Delete()
  @HttpCode(204)
  @ApiOperation({ summary: 'Sign out everywhere.' })
  @ApiNoContentResponse()
  async endAll(@Account() accountId: string, @Res({ passthrough: true }) reply: FastifyReply): Promise<void> {
    await this.signIns.endAll(accountId);
    this.cookie.takeAway(reply);
  }
}
