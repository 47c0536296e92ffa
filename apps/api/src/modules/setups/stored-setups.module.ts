import { Module } from '@nestjs/common';
import { SetupsQueries } from './setups.queries.js';
import { StoredSetups } from './stored-setups.js';

/** Apart from the module of set-ups, which stands on decisions, and they on what is stored. */
@Module({ providers: [SetupsQueries, StoredSetups], exports: [SetupsQueries, StoredSetups] })
export class StoredSetupsModule {}
