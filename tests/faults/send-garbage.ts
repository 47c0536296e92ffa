import { type Agent, type IncomingMessage, request } from 'node:http';
import type { Answer } from './garbage-answers.js';
import type { GarbageRequest } from './garbage.js';

/** A request is given up as hanging after this long. */
const HANG_MS = 30_000;
/** Of a long answer so much is looked at. */
const READ_CHARACTERS = 300_000;

/** Sends a request as it is, as if from the address that is the `number`th of a large network. */
export function send(
  agent: Agent,
  address: string,
  garbage: GarbageRequest,
  cookie: string | undefined,
  number: number,
): Promise<Answer> {
  const start = performance.now();
  // Node states no length for the body of a GET: what follows would be taken for a request of its own.
  const length = garbage.body && { 'content-length': String(garbage.body.length) };
  const from = `10.${(number >> 16) & 255}.${(number >> 8) & 255}.${number & 255}`;
  const headers = {
    ...garbage.headers,
    ...length,
    'x-forwarded-for': from,
    ...(cookie !== undefined && { cookie }),
  };
  return new Promise((resolve) => {
    let text = '';
    let givenUp = false;
    const end = (status: number) => resolve({ status, ms: performance.now() - start, givenUp, text });
    const call = request(
      address + garbage.path,
      { agent, method: garbage.method, headers, timeout: HANG_MS },
      (answer: IncomingMessage) => {
        const status = answer.statusCode ?? 0;
        answer.setEncoding('utf8');
        // Live events do not end by themselves.
        if (answer.headers['content-type']?.includes('event-stream')) {
          answer.destroy();
          end(status);
          return;
        }
        answer.on('data', (part: string) => {
          if (text.length < READ_CHARACTERS) text += part;
        });
        answer.on('end', () => end(status));
      },
    );
    call.on('timeout', () => {
      givenUp = true;
      call.destroy();
    });
    call.on('error', () => end(0));
    call.end(garbage.body);
  });
}
