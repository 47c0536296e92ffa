import { Body, Controller, Get, Header, HttpCode, Post, Req, Res } from '@nestjs/common';
import {
  ApiBody,
  ApiConsumes,
  ApiCreatedResponse,
  ApiOkResponse,
  ApiOperation,
  ApiProduces,
  ApiTags,
} from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Roles, TokenScope } from '../../../platform/http/access.js';
import { FileRoom } from '../../../platform/http/file-room.js';
import { ROLES, Scope, type TeamScope } from '../../../platform/http/scope.js';
import { textOf } from '../../../platform/http/text-body.js';
import { NotCsv } from './csv.errors.js';
import { ExportRuns } from './export-runs.js';
import { ImportDto, ImportPreviewDto } from './import.dto.js';
import { ImportRuns } from './import-runs.js';

export const CSV_TYPE = 'text/csv';
/** A season's runs. */
export const CSV_LIMIT_BYTES = 4 * 1024 * 1024;

const SCHEMA = {
  type: 'string',
  description: 'A header line, then one line for each run: docs/csv.md tells the columns.',
  example:
    'date,track,bike,time_s,fork_travel_left_mm\n2026-05-09,Quarry Stairs,"Rider A, enduro",3:07.4,18\n',
};

@ApiTags('runs')
@Controller('teams/:teamId/runs')
export class CsvController {
  constructor(
    private readonly imports: ImportRuns,
    private readonly exports: ExportRuns,
    private readonly room: FileRoom,
  ) {}

  @Roles('mechanic', 'coach')
  @TokenScope('log-runs')
  @Post('import/preview')
  @HttpCode(200)
  @ApiOperation({ summary: 'Show what an import of runs would store, and every problem; stores nothing.' })
  @ApiConsumes(CSV_TYPE)
  @ApiBody({ schema: SCHEMA as object })
  @ApiOkResponse({ type: ImportPreviewDto })
  preview(@Scope() scope: TeamScope, @Body() body: unknown): Promise<ImportPreviewDto> {
    return this.imports.preview(scope, textOf(body, new NotCsv()));
  }

  @Roles('mechanic', 'coach')
  @TokenScope('log-runs')
  @Post('import')
  @ApiOperation({ summary: 'Import runs: all of the file, or nothing if one line has a problem.' })
  @ApiConsumes(CSV_TYPE)
  @ApiBody({ schema: SCHEMA as object })
  @ApiCreatedResponse({ type: ImportDto })
  commit(@Scope() scope: TeamScope, @Body() body: unknown): Promise<ImportDto> {
    return this.imports.commit(scope, textOf(body, new NotCsv()));
  }

  @Roles(...ROLES)
  @TokenScope('read')
  @Get('export')
  @Header('content-disposition', 'attachment; filename="runs.csv"')
  @Header('content-type', 'text/csv; charset=utf-8')
  @ApiOperation({ summary: 'Runs as CSV, in the columns of the import; a rider gets their own.' })
  @ApiProduces(CSV_TYPE)
  @ApiOkResponse({ schema: SCHEMA as object })
  csv(
    @Scope() scope: TeamScope,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    this.room.take(scope.accountId, CSV_LIMIT_BYTES, request, reply);
    return this.exports.csv(scope);
  }
}
