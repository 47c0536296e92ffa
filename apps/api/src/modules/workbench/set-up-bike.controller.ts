import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles, TokenScope } from '../../platform/http/access.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import { RestoreInputDto, SetupDto, SetupInputDto } from '../setups/setups.dto.js';
import { SetUpBike } from './set-up-bike.js';

/** Beside the reading of set-ups, and above it: what is expected needs the runs, which stand on set-ups. */
@ApiTags('setups')
@Controller('teams/:teamId/setups')
export class SetUpBikeController {
  constructor(private readonly setUpBike: SetUpBike) {}

  @Roles('mechanic', 'rider')
  @TokenScope('change-set-ups')
  @Post()
  @ApiOperation({ summary: 'Set a bike up: makes its next revision and a decision record.' })
  @ApiCreatedResponse({ type: SetupDto })
  create(@Scope() scope: TeamScope, @Body() input: SetupInputDto): Promise<SetupDto> {
    return this.setUpBike.create(scope, input);
  }

  @Roles('mechanic', 'rider')
  @TokenScope('change-set-ups')
  @Post(':id/restore')
  @ApiOperation({ summary: 'Go back to this set-up: makes a new revision equal to it.' })
  @ApiCreatedResponse({ type: SetupDto })
  restore(
    @Scope() scope: TeamScope,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() input: RestoreInputDto,
  ): Promise<SetupDto> {
    return this.setUpBike.restore(scope, id, input.reason);
  }
}
