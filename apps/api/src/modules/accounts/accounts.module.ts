import { Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { Throttle } from '../../platform/security/throttle.js';
import { TeamsModule } from '../teams/teams.module.js';
import { AccountsController } from './accounts.controller.js';
import { AccountsQueries } from './accounts.queries.js';
import { AccountsService } from './accounts.service.js';
import { SignInGuard } from './sign-in.guard.js';

@Module({
  imports: [TeamsModule],
  controllers: [AccountsController],
  providers: [AccountsService, AccountsQueries, Throttle, { provide: APP_GUARD, useClass: SignInGuard }],
})
export class AccountsModule {}
