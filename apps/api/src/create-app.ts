import 'reflect-metadata';
import { randomUUID } from 'node:crypto';
import cookie from '@fastify/cookie';
import { ConsoleLogger, type LogLevel } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { refuseFilesWithoutRoom, type FileType } from './modules/accounts/large-bodies.js';
import { CSV_LIMIT_BYTES, CSV_TYPE } from './modules/runs/csv/csv.controller.js';
import { GPX_LIMIT_BYTES, GPX_TYPE } from './modules/runs/recording/recording.controller.js';
import { AppModule } from './app.module.js';
import type { Config } from './config/config.js';
import { ARCHIVE_LIMIT_BYTES, ARCHIVE_TYPE } from './modules/team-archive/archive.js';
import { completeAnswers } from './platform/http/answer-hooks.js';
import { refuseLargeBodies } from './platform/http/body-size.js';
import { serveDashboard } from './platform/http/dashboard-files.js';
import { serveOpenApi } from './platform/http/open-api.js';
import { refuseForgedRequests } from './platform/http/forged-requests.js';
import { followRequests } from './platform/http/request-origin.js';
import { sendSecurityHeaders } from './platform/http/security-headers.js';
import { followServing } from './platform/http/served.js';
import { acceptTextBodies } from './platform/http/text-body.js';
import { logAnswers } from './platform/operations/log-answers.js';
import { serveMetrics } from './platform/operations/metrics.js';
import { validationPipe } from './platform/http/validation.pipe.js';
import { rememberValidationRules } from './platform/http/validation-rules.js';

const API_PREFIX = 'api/v1';

const FILES: readonly FileType[] = [
  { type: CSV_TYPE, limitBytes: CSV_LIMIT_BYTES },
  { type: GPX_TYPE, limitBytes: GPX_LIMIT_BYTES },
  { type: ARCHIVE_TYPE, limitBytes: ARCHIVE_LIMIT_BYTES, isCostly: true },
];
/** Several times the largest message: a stranger's is read and looked at before it is known who sends it. */
const MESSAGE_LIMIT_BYTES = 256 * 1024;
/** An archive over a phone's bad line takes minutes; who sends a byte now and then must not hold a connection for ever. */
const REQUEST_LIMIT_MS = 300_000;
const LOG_LEVELS: readonly LogLevel[] = ['fatal', 'error', 'warn', 'log', 'debug', 'verbose'];

/** The whole service, ready to listen. */
export async function createApp(config: Config): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({
    bodyLimit: MESSAGE_LIMIT_BYTES,
    requestTimeout: REQUEST_LIMIT_MS,
    genReqId: () => randomUUID(),
    trustProxy: [...config.trustedProxies],
  });
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.with(config), adapter, {
    logger: new ConsoleLogger({ json: true, flattenParams: true, logLevels: levelsFrom(config.logLevel) }),
    abortOnError: false,
  });
  await app.register(cookie);
  await sendSecurityHeaders(app, { apiPath: `/${API_PREFIX}`, isHttps: config.secureCookies });
  app.setGlobalPrefix(API_PREFIX);
  refuseForgedRequests(app);
  followServing(app);
  refuseFilesWithoutRoom(app, FILES, MESSAGE_LIMIT_BYTES);
  refuseLargeBodies(app);
  followRequests(app);
  for (const { type, limitBytes } of FILES) acceptTextBodies(app, type, limitBytes);
  completeAnswers(app);
  if (levelsFrom(config.logLevel).includes('log')) logAnswers(app);
  await serveMetrics(app, config.metricsToken);
  rememberValidationRules();
  app.useGlobalPipes(validationPipe);
  serveOpenApi(app);
  if (config.dashboardDir) await serveDashboard(app, config.dashboardDir, `/${API_PREFIX}`);
  return app;
}

function levelsFrom(wanted: string): LogLevel[] {
  const name = wanted === 'info' ? 'log' : wanted;
  const last = LOG_LEVELS.findIndex((level) => level === name);
  return LOG_LEVELS.slice(0, last < 0 ? 0 : last + 1);
}
