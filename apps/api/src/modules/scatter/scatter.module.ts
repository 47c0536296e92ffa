import { Module } from '@nestjs/common';
import { RunsModule } from '../runs/runs.module.js';
import { PastRuns } from './past-runs.js';

@Module({ imports: [RunsModule], providers: [PastRuns], exports: [PastRuns] })
export class ScatterModule {}
