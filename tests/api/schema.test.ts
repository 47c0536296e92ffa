import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDataSource } from '../../apps/api/src/platform/database/data-source.js';
import { openApiDocument } from '../../apps/api/src/platform/http/open-api.js';
import { Member } from './support/member.js';
import { readDocument, routesOf } from './support/open-api.js';
import { startService, type TestService } from './support/service.js';

const document = readDocument();
let service: TestService;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

describe('a migrated database', () => {
  it('is what the entities say: the schema builder finds nothing to do', async () => {
    const source = createDataSource(service.database.ownerUrl, 1);
    await source.initialize();
    const { upQueries } = await source.driver.createSchemaBuilder().log();
    await source.destroy();
    expect(upQueries.map(({ query }) => query)).toEqual([]);
  });

  it('is left as it is when the migrations run a second time', async () => {
    const source = createDataSource(service.database.ownerUrl, 1);
    await source.initialize();
    const run = await source.runMigrations();
    await source.destroy();
    expect(run).toEqual([]);
  });
});

describe('the OpenAPI document', () => {
  it('in the repository is the one that the code gives', () => {
    expect(JSON.parse(JSON.stringify(openApiDocument(service.app)))).toEqual(document);
  });

  it('is served', async () => {
    const { body } = await new Member(service).get('/openapi.json').expect(200);
    expect((body as { openapi: string }).openapi).toBe('3.1.0');
  });

  it('has a summary for every route', () => {
    const silent = routesOf(document).filter(({ summary }) => !summary?.trim());
    expect(silent.map(({ method, path }) => `${method} ${path}`)).toEqual([]);
  });

  it('has a description for every field of every message', () => {
    const silent = Object.entries(document.components.schemas).flatMap(([name, { properties = {} }]) =>
      Object.entries(properties)
        .filter(([, field]) => !field.description?.trim())
        .map(([field]) => `${name}.${field}`),
    );
    expect(silent).toEqual([]);
  });

  it('has limits and an example for every number', () => {
    const loose = Object.entries(document.components.schemas).flatMap(([name, { properties = {} }]) =>
      Object.entries(properties)
        .filter(([, { type }]) => ['number', 'integer'].some((kind) => [type].flat().includes(kind)))
        .filter(
          ([, { minimum, maximum, example }]) =>
            minimum === undefined || maximum === undefined || example === undefined,
        )
        .map(([field]) => `${name}.${field}`),
    );
    expect(loose.filter((field) => field !== 'Problem.status')).toEqual([]);
  });
});
