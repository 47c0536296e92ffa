import { Module, type DynamicModule } from '@nestjs/common';
import { APP_FILTER } from '@nestjs/core';
import type { Config } from './config/config.js';
import { ConfigModule } from './config/config.module.js';
import { AccountsModule } from './modules/accounts/accounts.module.js';
import { HealthModule } from './modules/health/health.module.js';
import { ApiTokensModule } from './modules/api-tokens/api-tokens.module.js';
import { AuditModule } from './modules/audit/audit.module.js';
import { BaselinesModule } from './modules/baselines/baselines.module.js';
import { BikesModule } from './modules/bikes/bikes.module.js';
import { ComparisonsModule } from './modules/comparisons/comparisons.module.js';
import { DecisionsModule } from './modules/decisions/decisions.module.js';
import { EventsModule } from './modules/events/events.module.js';
import { PitModule } from './modules/pit/pit.module.js';
import { PlannedSessionsModule } from './modules/planned-sessions/planned-sessions.module.js';
import { RidersModule } from './modules/riders/riders.module.js';
import { RunsModule } from './modules/runs/runs.module.js';
import { SessionsModule } from './modules/sessions/sessions.module.js';
import { SetupsModule } from './modules/setups/setups.module.js';
import { SpringUnitsModule } from './modules/spring-units/spring-units.module.js';
import { TestPlansModule } from './modules/test-plans/test-plans.module.js';
import { TracksModule } from './modules/tracks/tracks.module.js';
import { TeamArchiveModule } from './modules/team-archive/team-archive.module.js';
import { TeamsModule } from './modules/teams/teams.module.js';
import { SpacersModule } from './modules/spacers/spacers.module.js';
import { WorkOrdersModule } from './modules/work-orders/work-orders.module.js';
import { UnitServiceModule } from './modules/unit-service/unit-service.module.js';
import { SpringModule } from './modules/spring/spring.module.js';
import { WorkbenchModule } from './modules/workbench/workbench.module.js';
import { ComputeModule } from './platform/compute/compute.module.js';
import { DatabaseModule } from './platform/database/database.module.js';
import { FairnessModule } from './platform/http/fairness.module.js';
import { OperationsModule } from './platform/operations/operations.module.js';
import { ProblemFilter } from './platform/errors/problem.filter.js';

@Module({})
export class AppModule {
  static with(config: Config): DynamicModule {
    return {
      module: AppModule,
      imports: [
        ConfigModule.with(config),
        OperationsModule,
        FairnessModule,
        DatabaseModule,
        ComputeModule,
        HealthModule,
        AccountsModule,
        TeamsModule,
        TeamArchiveModule,
        ApiTokensModule,
        AuditModule,
        RidersModule,
        SpringUnitsModule,
        BikesModule,
        TracksModule,
        SessionsModule,
        SetupsModule,
        DecisionsModule,
        RunsModule,
        TestPlansModule,
        PlannedSessionsModule,
        ComparisonsModule,
        BaselinesModule,
        SpringModule,
        WorkbenchModule,
        SpacersModule,
        UnitServiceModule,
        WorkOrdersModule,
        PitModule,
        EventsModule,
      ],
      providers: [{ provide: APP_FILTER, useClass: ProblemFilter }],
    };
  }
}
