/** One field that the API refused, and what it would allow. */
export interface RefusedField {
  /** Path in the message, as the form counts it too: `fork.pressurePsi`. */
  readonly field: string;
  readonly allowed: string;
}

/** The API said no (RFC 9457 problem details), with the reason in words for the person who asked. */
export class ApiProblem extends Error {
  override readonly name = 'ApiProblem';

  constructor(
    readonly status: number,
    readonly code: string,
    readonly title: string,
    detail: string,
    readonly fields: readonly RefusedField[],
    /** The id under which the API has logged it, if it has. */
    readonly requestId: string | null,
  ) {
    super(detail);
  }
}

/** The request did not reach the API, or its answer did not come back. */
export class NoConnection extends Error {
  override readonly name = 'NoConnection';
}

const asText = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function refusedFields(errors: unknown): RefusedField[] {
  if (!Array.isArray(errors)) return [];
  return errors.filter(isRecord).flatMap(({ field, allowed }) => {
    const [name, range] = [asText(field), asText(allowed)];
    return name === undefined || range === undefined ? [] : [{ field: name, allowed: range }];
  });
}

/** Reads the body of a refusal; what is no problem document (a proxy's page) becomes one. */
export function problemOf(status: number, body: unknown): ApiProblem {
  const document = isRecord(body) ? body : {};
  return new ApiProblem(
    status,
    asText(document['code']) ?? 'unknown',
    asText(document['title']) ?? `The service answered with status ${status}`,
    asText(document['detail']) ?? '',
    refusedFields(document['errors']),
    asText(document['requestId']) ?? null,
  );
}
