import { Module, type DynamicModule } from '@nestjs/common';
import type { Config } from './config.js';
import { CONFIG } from './config.token.js';

@Module({})
export class ConfigModule {
  static with(config: Config): DynamicModule {
    return {
      module: ConfigModule,
      global: true,
      providers: [{ provide: CONFIG, useValue: config }],
      exports: [CONFIG],
    };
  }
}
