import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { ROLES, Scope, type TeamScope } from '../../platform/http/scope.js';
import { SetupDto } from '../setups/setups.dto.js';
import { BikeEndsService } from './bike-ends.service.js';
import { ChangeInputDto } from './changes.dto.js';
import { BikeEndsDto, EndsQuery } from './ends.dto.js';
import { MakeChange } from './make-change.js';

@ApiTags('workbench')
@Controller('teams/:teamId')
export class WorkbenchController {
  constructor(
    private readonly bikeEnds: BikeEndsService,
    private readonly makeChange: MakeChange,
  ) {}

  @Roles(...ROLES)
  @TokenScope('read')
  @Get('bikes/:bikeId/ends')
  @ApiOperation({ summary: 'Both ends of a bike with everything that is needed to try changes at them.' })
  @ApiOkResponse({ type: BikeEndsDto })
  ends(
    @Scope() scope: TeamScope,
    @Param('bikeId', ParseUUIDPipe) bikeId: string,
    @Query() query: EndsQuery,
  ): Promise<BikeEndsDto> {
    return this.bikeEnds.ends(scope, bikeId, query.trackId ?? null);
  }

  @Roles('mechanic', 'rider')
  @TokenScope('change-set-ups')
  @Post('changes')
  @ApiOperation({
    summary: "Make a change: the bike's next set-up, and a decision record with what is expected of it.",
  })
  @ApiCreatedResponse({ type: SetupDto })
  change(@Scope() scope: TeamScope, @Body() input: ChangeInputDto): Promise<SetupDto> {
    return this.makeChange.make(scope, input);
  }
}
