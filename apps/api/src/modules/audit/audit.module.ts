import { Module } from '@nestjs/common';
import { AuditController } from './audit.controller.js';
import { AuditQueries } from './audit.queries.js';
import { AuditService } from './audit.service.js';

@Module({ controllers: [AuditController], providers: [AuditService, AuditQueries] })
export class AuditModule {}
