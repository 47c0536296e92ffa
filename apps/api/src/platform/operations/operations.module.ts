import { Global, Module } from '@nestjs/common';
import { Gauges } from './gauges.js';
import { Serving } from './serving.js';

/** What who looks after the service asks it for. */
@Global()
@Module({ providers: [Gauges, Serving], exports: [Gauges, Serving] })
export class OperationsModule {}
