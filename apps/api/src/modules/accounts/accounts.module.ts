import { Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { Throttle } from '../../platform/security/throttle.js';
import { TeamsModule } from '../teams/teams.module.js';
import { AccessNow } from './access-now.js';
import { AccountsController } from './accounts.controller.js';
import { AccountsQueries } from './accounts.queries.js';
import { AccountsService } from './accounts.service.js';
import { Callers } from './callers.js';
import { CallersQueries } from './callers.queries.js';
import { PasswordsController } from './passwords.controller.js';
import { PasswordsQueries } from './passwords.queries.js';
import { PasswordsService } from './passwords.service.js';
import { SignInAnswer } from './sign-in-answer.js';
import { SignInCookie } from './sign-in-cookie.js';
import { SignInGuard } from './sign-in.guard.js';
import { SignInsController } from './sign-ins.controller.js';
import { SignInsQueries } from './sign-ins.queries.js';
import { SignInsService } from './sign-ins.service.js';
import { UnitsController } from './units.controller.js';

@Module({
  imports: [TeamsModule],
  controllers: [AccountsController, SignInsController, PasswordsController, UnitsController],
  providers: [
    AccountsService,
    AccountsQueries,
    AccessNow,
    SignInsService,
    SignInsQueries,
    SignInAnswer,
    SignInCookie,
    PasswordsService,
    PasswordsQueries,
    Callers,
    CallersQueries,
    Throttle,
    { provide: APP_GUARD, useClass: SignInGuard },
  ],
  exports: [AccessNow, SignInCookie],
})
export class AccountsModule {}
