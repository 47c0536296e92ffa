import { Global, Module } from '@nestjs/common';
import { FileRoom } from './file-room.js';
import { RequestTurns } from './request-turns.js';

/** What keeps one caller from taking all of a process from others. */
@Global()
@Module({ providers: [RequestTurns, FileRoom], exports: [RequestTurns, FileRoom] })
export class FairnessModule {}
