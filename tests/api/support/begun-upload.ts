import { request } from 'node:http';

const KIBIBYTE = 1_024;
/** What is not refused by then is waited for. */
const PATIENCE_MS = 500;

/** A request that has announced a body and sent the first of it. */
export interface BegunUpload {
  /** What was answered before the rest was sent; null where the service waits for it. */
  readonly answer: { readonly status: number; readonly retryAfter: number; readonly code: unknown } | null;
  /** Hangs up. */
  close(): void;
}

/** Announces so many KiB, or does not tell how many, and sends one. */
export function beginUpload(
  url: string,
  headers: Readonly<Record<string, string>>,
  kibibytes: number | 'untold',
): Promise<BegunUpload> {
  return new Promise((resolve) => {
    const length = kibibytes === 'untold' ? {} : { 'content-length': String(kibibytes * KIBIBYTE) };
    const call = request(url, { method: 'POST', headers: { ...headers, ...length }, agent: false });
    const close = () => void call.destroy();
    const patience = setTimeout(() => resolve({ answer: null, close }), PATIENCE_MS);
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
