import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { SessionsModule } from '../sessions/sessions.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { CsvController } from './csv/csv.controller.js';
import { ExportRuns } from './csv/export-runs.js';
import { ImportRuns } from './csv/import-runs.js';
import { OpenImport } from './csv/open-import.js';
import { TeamNames } from './csv/team-names.js';
import { HitHeights } from './hit-heights.js';
import { LogRun } from './log-run.js';
import { ImportRecording } from './recording/import-recording.js';
import { RecordingController } from './recording/recording.controller.js';
import { RunRecordsReader } from './run-records.js';
import { RunsController } from './runs.controller.js';
import { RunsService } from './runs.service.js';
import { StoredRunsModule } from './stored-runs.module.js';

@Module({
  imports: [
    BikesModule,
    BlindingModule,
    RidersModule,
    SessionsModule,
    SetupsModule,
    SpringUnitsModule,
    StoredRunsModule,
    TracksModule,
  ],
  // Its fixed paths come before `runs/:id`.
  controllers: [CsvController, RecordingController, RunsController],
  providers: [
    RunsService,
    LogRun,
    HitHeights,
    RunRecordsReader,
    ImportRuns,
    ImportRecording,
    OpenImport,
    ExportRuns,
    TeamNames,
  ],
  exports: [HitHeights, LogRun, RunsService, StoredRunsModule],
})
export class RunsModule {}
