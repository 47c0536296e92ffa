import { Module } from '@nestjs/common';
import { RunsQueries } from './runs.queries.js';
import { StoredRuns } from './stored-runs.js';

/** Apart from the module of runs, which stands on set-ups, they on decisions, and those on what is stored. */
@Module({ providers: [RunsQueries, StoredRuns], exports: [RunsQueries, StoredRuns] })
export class StoredRunsModule {}
