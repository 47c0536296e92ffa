import { Module } from '@nestjs/common';
import { RunsModule } from '../runs/runs.module.js';
import { ArchiveQueries } from './archive.queries.js';
import { TakeArchive } from './take-archive.js';
import { TeamArchiveController } from './team-archive.controller.js';
import { WriteArchive } from './write-archive.js';

@Module({
  imports: [RunsModule],
  controllers: [TeamArchiveController],
  providers: [ArchiveQueries, TakeArchive, WriteArchive],
})
export class TeamArchiveModule {}
