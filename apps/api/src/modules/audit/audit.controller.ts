import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Roles } from '../../platform/http/access.js';
import type { Page } from '../../platform/http/page.js';
import { Scope, type TeamScope } from '../../platform/http/scope.js';
import { type AuditEntryDto, AuditPageDto, AuditQuery } from './audit.dto.js';
import { AuditService } from './audit.service.js';

@ApiTags('audit')
@Controller('teams/:teamId/audit')
export class AuditController {
  constructor(private readonly audit: AuditService) {}

  @Roles('mechanic')
  @Get()
  @ApiOperation({ summary: 'Who changed what and when, newest first.' })
  @ApiOkResponse({ type: AuditPageDto })
  list(@Scope() scope: TeamScope, @Query() query: AuditQuery): Promise<Page<AuditEntryDto>> {
    return this.audit.list(scope, query);
  }
}
