import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { Public } from '../../platform/http/access.js';
import { ChoiceField } from '../../platform/http/fields.js';

class HealthDto {
  @ChoiceField({ description: 'State of the service.', choices: ['ok'] })
  status: 'ok';
}

@ApiTags('health')
@Controller('health')
export class HealthController {
  constructor(private readonly database: TeamDatabase) {}

  @Public()
  @Get('live')
  @ApiOperation({ summary: 'The process answers.' })
  @ApiOkResponse({ type: HealthDto })
  live(): HealthDto {
    return { status: 'ok' };
  }

  @Public()
  @Get('ready')
  @ApiOperation({ summary: 'The process answers and reaches its database; 503 if it does not.' })
  @ApiOkResponse({ type: HealthDto })
  async ready(): Promise<HealthDto> {
    await this.database.asStranger((transaction) => transaction.query('select 1'));
    return { status: 'ok' };
  }
}
