import { request } from 'node:http';

const KIBIBYTE = 1_024;
/** How long a refusal may take on a busy machine, and how long none may come for a body that is waited for. */
const REFUSED_MS = 20_000;
export const QUIET_MS = 500;

/** A request that has announced a body and sent the first of it. */
export interface BegunUpload {
  /** What was answered before the rest was sent; null where nothing was. */
  readonly answer: { readonly status: number; readonly retryAfter: number; readonly code: unknown } | null;
  /** Hangs up. */
  close(): void;
}

/** Announces so many KiB, or does not tell how many, sends one, and waits for an answer as long as `patienceMs`. */
export function beginUpload(
  url: string,
  headers: Readonly<Record<string, string>>,
  kibibytes: number | 'untold',
  patienceMs = REFUSED_MS,
): Promise<BegunUpload> {
  return new Promise((resolve) => {
    const length = kibibytes === 'untold' ? {} : { 'content-length': String(kibibytes * KIBIBYTE) };
    const call = request(url, { method: 'POST', headers: { ...headers, ...length }, agent: false });
    const close = () => void call.destroy();
    const patience = setTimeout(() => resolve({ answer: null, close }), patienceMs);
    call.on('error', () => undefined);
    call.on('response', (response) => {
      clearTimeout(patience);
      let text = '';
      response.setEncoding('utf8').on('data', (part) => (text += String(part)));
      response.on('error', () => undefined);
      response.on('end', () => {
        const { code } = JSON.parse(text) as { code?: unknown };
        const retryAfter = Number(response.headers['retry-after']);
        resolve({ answer: { status: response.statusCode ?? 0, retryAfter, code }, close });
      });
    });
    call.write('x'.repeat(KIBIBYTE));
  });
}
