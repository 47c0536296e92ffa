import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import {
  ReverseInputDto,
  SpacerMovementDto,
  SpacerMovementInputDto,
  SpacerMovementListQuery,
  SpacerMovementPageDto,
  SpacerStockListDto,
} from './spacers.dto.js';
import { SpacersService } from './spacers.service.js';

@ApiTags('spacers')
@Controller('teams/:teamId')
export class SpacersController {
  constructor(private readonly spacers: SpacersService) {}

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get('spacers')
  @ApiOperation({ summary: 'How many spacers of each size lie in stock, and which units take them.' })
  @ApiOkResponse({ type: SpacerStockListDto })
  list(@Scope() scope: TeamScope): Promise<SpacerStockListDto> {
    return this.spacers.list(scope);
  }

  @Roles('mechanic', 'coach')
  @TokenScope('read')
  @Get('spacer-movements')
  @ApiOperation({ summary: 'How the stock came to be, newest first.' })
  @ApiOkResponse({ type: SpacerMovementPageDto })
  history(
    @Scope() scope: TeamScope,
    @Query() query: SpacerMovementListQuery,
  ): Promise<Page<SpacerMovementDto>> {
    return this.spacers.history(scope, query);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('spacer-movements')
  @ApiOperation({ summary: 'Record a count, or spacers that came or went.' })
  @ApiCreatedResponse({ type: SpacerMovementDto })
  enter(@Scope() scope: TeamScope, @Body() input: SpacerMovementInputDto): Promise<SpacerMovementDto> {
    return this.spacers.enter(scope, input);
  }

  @Roles('mechanic')
  @TokenScope('edit-records')
  @Post('spacer-movements/:id/reverse')
  @ApiOperation({ summary: 'Undo a movement by a reversing one; both stay.' })
  @ApiCreatedResponse({ type: SpacerMovementDto })
  reverse(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: ReverseInputDto,
  ): Promise<SpacerMovementDto> {
    return this.spacers.reverse(scope, id, input.note);
  }
}
