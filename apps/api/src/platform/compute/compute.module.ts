import { Global, Module } from '@nestjs/common';
import { ComputeThread } from './compute-thread.js';

@Global()
@Module({ providers: [ComputeThread], exports: [ComputeThread] })
export class ComputeModule {}
