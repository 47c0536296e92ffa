import { Global, Inject, Module, type OnApplicationShutdown, type OnModuleInit } from '@nestjs/common';
import type { Pool } from 'pg';
import { DataSource } from 'typeorm';
import { CONFIG } from '../../config/config.token.js';
import type { Config } from '../../config/config.js';
import { Gauges } from '../operations/gauges.js';
import { refuseTooMuchPower, TooMuchPower } from './app-role.js';
import { ComputingPlaces } from './computing-places.js';
import { createDataSource } from './data-source.js';
import { Purge } from './purge.js';
import { TeamDatabase } from './team-database.js';

const RETRY_MS = 500;
const START_TRIES = 60;

@Global()
@Module({
  providers: [
    Purge,
    {
      provide: DataSource,
      inject: [CONFIG],
      useFactory: (config: Config) => createDataSource(config.appDatabaseUrl, config.databasePoolSize),
    },
    {
      provide: TeamDatabase,
      inject: [DataSource, CONFIG],
      useFactory: (source: DataSource, { databasePoolSize }: Config) =>
        new TeamDatabase(source, new ComputingPlaces(Math.max(1, Math.floor(databasePoolSize / 2)))),
    },
  ],
  exports: [TeamDatabase],
})
export class DatabaseModule implements OnModuleInit, OnApplicationShutdown {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    gauges: Gauges,
  ) {
    const pool = (): Pool | undefined => (dataSource.driver as unknown as { master?: Pool }).master;
    gauges.add(
      {
        name: 'loamledger_database_connections',
        help: 'Connections to the database that this process holds.',
        read: () => pool()?.totalCount ?? 0,
      },
      {
        name: 'loamledger_database_connections_idle',
        help: 'Those of them that nobody uses at the moment.',
        read: () => pool()?.idleCount ?? 0,
      },
      {
        name: 'loamledger_database_requests_waiting',
        help: 'Requests that wait for a connection.',
        read: () => pool()?.waitingCount ?? 0,
      },
    );
  }

  async onModuleInit(): Promise<void> {
    await connectWhenReady(this.dataSource);
  }

  async onApplicationShutdown(): Promise<void> {
    if (this.dataSource.isInitialized) await this.dataSource.destroy();
  }
}

/**
 * Connects as a role that row-level security binds. Waits for a database that is still starting, as after a power cut,
 * or that goes away again meanwhile, instead of dying before it.
 * @throws TooMuchPower
 */
async function connectWhenReady(dataSource: DataSource): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      if (!dataSource.isInitialized) await dataSource.initialize();
      await refuseTooMuchPower((statement, values) => dataSource.query(statement, values));
      return;
    } catch (error) {
      if (error instanceof TooMuchPower || attempt >= START_TRIES) throw error;
      await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
    }
  }
}
