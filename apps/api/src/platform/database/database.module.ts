import { Global, Inject, Module, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CONFIG } from '../../config/config.token.js';
import type { Config } from '../../config/config.js';
import { createDataSource } from './data-source.js';
import { TeamDatabase } from './team-database.js';

const RETRY_MS = 500;
const START_TRIES = 60;

@Global()
@Module({
  providers: [
    {
      provide: DataSource,
      inject: [CONFIG],
      useFactory: (config: Config) =>
        connectWhenReady(createDataSource(config.appDatabaseUrl, config.databasePoolSize)),
    },
    {
      provide: TeamDatabase,
      inject: [DataSource],
      useFactory: (source: DataSource) => new TeamDatabase(source),
    },
  ],
  exports: [TeamDatabase],
})
export class DatabaseModule implements OnApplicationShutdown {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  async onApplicationShutdown(): Promise<void> {
    if (this.dataSource.isInitialized) await this.dataSource.destroy();
  }
}

/** Waits for a database that is still starting, as after a power cut, instead of dying before it. */
async function connectWhenReady(dataSource: DataSource): Promise<DataSource> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await dataSource.initialize();
    } catch (error) {
      if (attempt >= START_TRIES) throw error;
      await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
    }
  }
}
