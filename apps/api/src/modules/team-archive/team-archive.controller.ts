import { Readable } from 'node:stream';
import { Body, Controller, Get, Header, Headers, Post, Req, Res, StreamableFile } from '@nestjs/common';
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
import { AnyAccount, Roles } from '../../platform/http/access.js';
import { FileRoom } from '../../platform/http/file-room.js';
import { Account, Scope, type TeamScope } from '../../platform/http/scope.js';
import { textOf } from '../../platform/http/text-body.js';
import { ARCHIVE_LIMIT_BYTES, ARCHIVE_TYPE } from './archive.js';
import { ImportedTeamDto } from './imported-team.dto.js';
import { TakeArchive } from './take-archive.js';
import { NotAnArchive } from './team-archive.errors.js';
import { WriteArchive } from './write-archive.js';

const SCHEMA = {
  type: 'string',
  description: 'A whole team as one JSON document: docs/archive.md tells what is in it.',
  example: '{"format":"loamledger-team","version":1}',
};

@ApiTags('teams')
@Controller('teams')
export class TeamArchiveController {
  constructor(
    private readonly archives: WriteArchive,
    private readonly imports: TakeArchive,
    private readonly room: FileRoom,
  ) {}

  @Roles('mechanic')
  @Get(':teamId/archive')
  @Header('content-disposition', 'attachment; filename="team.json"')
  @Header('cache-control', 'no-store')
  @ApiOperation({ summary: 'Everything of the team but secrets, as one document that makes the team again.' })
  @ApiProduces(ARCHIVE_TYPE)
  @ApiOkResponse({ schema: SCHEMA as object })
  async archive(
    @Scope() scope: TeamScope,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StreamableFile> {
    // It is held in memory until the slowest reader has it.
    this.room.take(scope.accountId, ARCHIVE_LIMIT_BYTES, request, reply);
    return new StreamableFile(Readable.from(await this.archives.pieces(scope)), { type: ARCHIVE_TYPE });
  }

  @AnyAccount()
  @Post('import')
  @ApiOperation({
    summary: 'Make a new team of an archive, all of it or nothing; who makes it is its mechanic.',
  })
  @ApiConsumes(ARCHIVE_TYPE)
  @ApiBody({ schema: SCHEMA as object })
  @ApiCreatedResponse({ type: ImportedTeamDto })
  take(
    @Account() accountId: string,
    @Body() body: unknown,
    @Headers('idempotency-key') idempotencyKey?: string,
  ): Promise<ImportedTeamDto> {
    const text = textOf(body, new NotAnArchive(`Send the archive as ${ARCHIVE_TYPE}.`));
    return this.imports.take(accountId, text, idempotencyKey);
  }
}
