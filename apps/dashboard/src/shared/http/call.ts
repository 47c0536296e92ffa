/** What a call of the API may carry; the generated types say which of it each route takes. */
interface CallOptions {
  readonly params?: {
    readonly path?: Record<string, unknown>;
    readonly query?: Record<string, unknown>;
    readonly header?: Record<string, string>;
  };
  readonly headers?: Record<string, string>;
  readonly body?: unknown;
  readonly bodySerializer?: (body: unknown) => string;
  readonly signal?: AbortSignal;
}

const NO_CONTENT = 204;

/** `/teams/{teamId}` with what stands in the brackets, and the query behind it. */
export function addressOf(path: string, params: CallOptions['params'] = {}): string {
  const filled = path.replaceAll(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(String(params.path?.[name])),
  );
  const query = new URLSearchParams();
  for (const [name, given] of Object.entries(params.query ?? {})) {
    for (const value of Array.isArray(given) ? given : [given]) {
      if (value !== undefined && value !== null) query.append(name, String(value));
    }
  }
  return query.size === 0 ? filled : `${filled}?${query.toString()}`;
}

function textOf({ body, bodySerializer = JSON.stringify }: CallOptions): string | null {
  return body === undefined ? null : bodySerializer(body);
}

/** The body of a refusal: a problem document, or whatever a proxy has answered. */
async function errorOf(response: Response): Promise<unknown> {
  const text = await response.text();
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

/** A function that sends calls of one method; the session travels in an http-only cookie. */
export const caller =
  (method: string) =>
  async (path: string, options: CallOptions = {}) => {
    const response = await fetch(addressOf(path, options.params), {
      method,
      credentials: 'same-origin',
      headers: {
        ...(options.body !== undefined && { 'Content-Type': 'application/json' }),
        ...options.params?.header,
        ...options.headers,
      },
      body: textOf(options),
      ...(options.signal !== undefined && { signal: options.signal }),
    });
    if (!response.ok) return { error: await errorOf(response), response };
    return { data: response.status === NO_CONTENT ? undefined : await response.json(), response };
  };
