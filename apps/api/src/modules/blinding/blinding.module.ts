import { Module } from '@nestjs/common';
import { Blinding } from './blinding.js';
import { BlindingQueries } from './blinding.queries.js';

@Module({ providers: [Blinding, BlindingQueries], exports: [Blinding] })
export class BlindingModule {}
