import { Body, Controller, HttpCode, Post, Query } from '@nestjs/common';
import {
  ApiBody,
  ApiConsumes,
  ApiCreatedResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { Roles, TokenScope } from '../../../platform/http/access.js';
import { Scope, type TeamScope } from '../../../platform/http/scope.js';
import { textOf } from '../../../platform/http/text-body.js';
import { ImportRecording } from './import-recording.js';
import { RecordingDto, RecordingPreviewDto, RecordingQuery } from './recording.dto.js';
import { NotText } from './recording.errors.js';

export const GPX_TYPE = 'application/gpx+xml';
/** Eight hours at a fix a second, with what receivers write beside each; read in under half a second. */
export const GPX_LIMIT_BYTES = 4 * 1024 * 1024;

const SCHEMA = {
  type: 'string',
  description: 'A GPX 1.1 file with track points and their times; no document type.',
  example:
    '<gpx version="1.1" creator="receiver"><trk><trkseg><trkpt lat="46.50211" lon="8.10347"><time>2026-05-09T10:30:00Z</time></trkpt></trkseg></trk></gpx>',
};

@ApiTags('runs')
@Controller('teams/:teamId/runs')
export class RecordingController {
  constructor(private readonly recordings: ImportRecording) {}

  @Roles('mechanic', 'coach')
  @TokenScope('log-runs')
  @Post('import-recording/preview')
  @HttpCode(200)
  @ApiOperation({
    summary: 'Show the runs that a position recording holds between the gates of a track; stores nothing.',
  })
  @ApiConsumes(GPX_TYPE)
  @ApiBody({ schema: SCHEMA as object })
  @ApiOkResponse({ type: RecordingPreviewDto })
  preview(
    @Scope() scope: TeamScope,
    @Query() query: RecordingQuery,
    @Body() body: unknown,
  ): Promise<RecordingPreviewDto> {
    return this.recordings.preview(scope, query, textOf(body, new NotText()));
  }

  @Roles('mechanic', 'coach')
  @TokenScope('log-runs')
  @Post('import-recording')
  @ApiOperation({ summary: 'Store the runs of a position recording: all of them, or none.' })
  @ApiConsumes(GPX_TYPE)
  @ApiBody({ schema: SCHEMA as object })
  @ApiCreatedResponse({ type: RecordingDto })
  commit(
    @Scope() scope: TeamScope,
    @Query() query: RecordingQuery,
    @Body() body: unknown,
  ): Promise<RecordingDto> {
    return this.recordings.commit(scope, query, textOf(body, new NotText()));
  }
}
