import { Body, Controller, Delete, Get, HttpCode, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { Roles } from '../../platform/http/access.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import { ApiTokenDto, ApiTokenInputDto, NewApiTokenDto } from './api-tokens.dto.js';
import { ApiTokensService } from './api-tokens.service.js';

@ApiTags('tokens')
@Controller('teams/:teamId/tokens')
export class ApiTokensController {
  constructor(private readonly tokens: ApiTokensService) {}

  @Roles('mechanic')
  @Get()
  @ApiOperation({ summary: 'Tokens of the team for scripts.' })
  @ApiOkResponse({ type: ApiTokenDto, isArray: true })
  list(@Scope() scope: TeamScope): Promise<ApiTokenDto[]> {
    return this.tokens.list(scope);
  }

  @Roles('mechanic')
  @Post()
  @ApiOperation({ summary: 'Make a token for a script; it is shown this once.' })
  @ApiCreatedResponse({ type: NewApiTokenDto })
  create(@Scope() scope: TeamScope, @Body() input: ApiTokenInputDto): Promise<NewApiTokenDto> {
    return this.tokens.create(scope, input);
  }

  @Roles('mechanic')
  @Delete(':id')
  @HttpCode(204)
  @ApiOperation({ summary: 'Revoke a token at once.' })
  @ApiNoContentResponse()
  revoke(@Scope() scope: TeamScope, @Param('id', ParseUUIDPipe) id: string): Promise<void> {
    return this.tokens.revoke(scope, id);
  }
}
