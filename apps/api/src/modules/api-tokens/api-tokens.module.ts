import { Module } from '@nestjs/common';
import { ApiTokensController } from './api-tokens.controller.js';
import { ApiTokensQueries } from './api-tokens.queries.js';
import { ApiTokensService } from './api-tokens.service.js';

@Module({ controllers: [ApiTokensController], providers: [ApiTokensService, ApiTokensQueries] })
export class ApiTokensModule {}
