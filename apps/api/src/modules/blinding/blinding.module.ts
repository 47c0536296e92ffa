import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { Blinding } from './blinding.js';
import { BlindingQueries } from './blinding.queries.js';

@Module({ imports: [BikesModule], providers: [Blinding, BlindingQueries], exports: [Blinding] })
export class BlindingModule {}
