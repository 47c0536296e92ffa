import { Body, Controller, Delete, Get, Headers, HttpCode, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { AnyAccount, Roles, TokenScope } from '../../platform/http/access.js';
import { Account, ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { MemberLinksService } from './member-links.service.js';
import { MembersService } from './members.service.js';
import {
  InvitationDto,
  InvitationInputDto,
  MemberDto,
  PasswordLinkDto,
  TeamDto,
  TeamInputDto,
  SignInLinkDto,
  SignInLinkInputDto,
} from './teams.dto.js';

@ApiTags('teams')
@Controller('teams')
export class TeamsController {
  constructor(
    private readonly members: MembersService,
    private readonly links: MemberLinksService,
  ) {}

  @AnyAccount()
  @Post()
  @ApiOperation({ summary: 'Make a team; who makes it is its first mechanic.' })
  @ApiCreatedResponse({ type: TeamDto })
  create(
    @Account() accountId: string,
    @Body() input: TeamInputDto,
    @Headers('idempotency-key') idempotencyKey?: string,
  ): Promise<TeamDto> {
    return this.members.createTeam(accountId, input, idempotencyKey);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':teamId')
  @ApiOperation({ summary: 'A team.' })
  @ApiOkResponse({ type: TeamDto })
  team(@Scope() scope: TeamScope): Promise<TeamDto> {
    return this.members.team(scope);
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get(':teamId/members')
  @ApiOperation({ summary: 'Who belongs to the team.' })
  @ApiOkResponse({ type: MemberDto, isArray: true })
  list(@Scope() scope: TeamScope): Promise<MemberDto[]> {
    return this.members.members(scope);
  }

  @Roles('mechanic')
  @Post(':teamId/invitations')
  @ApiOperation({ summary: 'Make a single-use link into the team.' })
  @ApiCreatedResponse({ type: InvitationDto })
  invite(@Scope() scope: TeamScope, @Body() input: InvitationInputDto): Promise<InvitationDto> {
    return this.members.invite(scope, input);
  }

  @Roles('mechanic')
  @Post(':teamId/members/:id/sign-in-links')
  @ApiOperation({ summary: 'Make a single-use link by which a rider signs in on another phone.' })
  @ApiCreatedResponse({ type: SignInLinkDto })
  linkSignIn(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: SignInLinkInputDto,
  ): Promise<SignInLinkDto> {
    return this.links.linkSignIn(scope, id, input);
  }

  @Roles('mechanic')
  @Post(':teamId/members/:id/password-links')
  @ApiOperation({ summary: 'Make a single-use link by which a member sets a new password.' })
  @ApiCreatedResponse({ type: PasswordLinkDto })
  linkPassword(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<PasswordLinkDto> {
    return this.links.linkPassword(scope, id);
  }

  @Roles('mechanic')
  @Delete(':teamId/members/:id')
  @HttpCode(204)
  @ApiOperation({ summary: 'Take a person out of the team.' })
  @ApiNoContentResponse()
  remove(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<void> {
    return this.members.removeMember(scope, id);
  }
}
