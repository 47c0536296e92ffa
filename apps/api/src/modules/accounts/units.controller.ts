import { Body, Controller, Put } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { AnyAccount } from '../../platform/http/access.js';
import { IfMatch } from '../../platform/http/preconditions.js';
import { Account } from '../../platform/http/scope.js';
import { AccountsService } from './accounts.service.js';
import { UnitsDto, UnitsInputDto } from './units.dto.js';

@ApiTags('accounts')
@Controller('accounts/current/units')
export class UnitsController {
  constructor(private readonly accounts: AccountsService) {}

  @AnyAccount()
  @Put()
  @ApiOperation({ summary: 'Choose the units in which pages show figures; send the version as If-Match.' })
  @ApiOkResponse({ type: UnitsDto })
  replace(
    @Account() accountId: string,
    @IfMatch() version: number,
    @Body() input: UnitsInputDto,
  ): Promise<UnitsDto> {
    return this.accounts.chooseUnits(accountId, version, input);
  }
}
