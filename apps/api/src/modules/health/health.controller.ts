import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { Public } from '../../platform/http/access.js';
import { Refusal } from '../../platform/errors/refusal.js';
import { ChoiceField } from '../../platform/http/fields.js';
import { Serving } from '../../platform/operations/serving.js';

class Leaving extends Refusal {
  constructor() {
    super('service.leaving', 'unavailable', 'This process is about to stop.');
  }
}

class HealthDto {
  @ChoiceField({ description: 'State of the service.', choices: ['ok'] })
  status: 'ok';
}

@ApiTags('health')
@Controller('health')
export class HealthController {
  constructor(
    private readonly database: TeamDatabase,
    private readonly serving: Serving,
  ) {}

  @Public()
  @Get('live')
  @ApiOperation({ summary: 'The process answers.' })
  @ApiOkResponse({ type: HealthDto })
  live(): HealthDto {
    return { status: 'ok' };
  }

  @Public()
  @Get('ready')
  @ApiOperation({
    summary: 'The process answers, reaches its database and is not about to stop; 503 otherwise.',
  })
  @ApiOkResponse({ type: HealthDto })
  async ready(): Promise<HealthDto> {
    if (this.serving.isLeaving) throw new Leaving();
    await this.database.asStranger((transaction) => transaction.query('select 1'));
    return { status: 'ok' };
  }
}
