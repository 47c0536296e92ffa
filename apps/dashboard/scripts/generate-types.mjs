/**
 * Makes the types of the API from its OpenAPI document, so that a drift between the two fails the build.
 * The document names `{teamId}` in its paths, but not among the parameters of every operation; here it is
 * declared where it is missing.
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import openapiTS, { astToString } from 'openapi-typescript';

const DOCUMENT = new URL('../../api/openapi.json', import.meta.url);
const TYPES = new URL('../src/shared/http/generated/schema.d.ts', import.meta.url);

const document = JSON.parse(await readFile(DOCUMENT, 'utf8'));
for (const [path, operations] of Object.entries(document.paths)) {
  const named = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
  for (const operation of Object.values(operations)) {
    const declared = (operation.parameters ?? []).map(({ name }) => name);
    const missing = named
      .filter((name) => !declared.includes(name))
      .map((name) => ({ name, in: 'path', required: true, schema: { type: 'string' } }));
    operation.parameters = [...(operation.parameters ?? []), ...missing];
  }
}
await mkdir(new URL('.', TYPES), { recursive: true });
await writeFile(TYPES, astToString(await openapiTS(document)));
