import { get, type IncomingHttpHeaders } from 'node:http';

interface StreamEvent {
  readonly event: string;
  readonly data: Readonly<Record<string, unknown>>;
}

/** An open stream of server-sent events. */
export interface OpenEvents {
  readonly headers: IncomingHttpHeaders;
  /** All events so far. */
  readonly seen: readonly StreamEvent[];
  /** The data of the next event of this name, and kind where one is given, that was not asked for yet. */
  next(event: string, kind?: string): Promise<StreamEvent['data']>;
  /** Settled when the service has ended the stream. */
  readonly ended: Promise<void>;
  close(): void;
}

/** Asks for a stream of events and reads it until it is closed. */
export function openEvents(url: string, cookie: string): Promise<OpenEvents> {
  return new Promise((resolve, reject) => {
    const request = get(url, { headers: { cookie, accept: 'text/event-stream' }, agent: false }, (answer) => {
      if (answer.statusCode !== 200) {
        reject(new Error(`${url} answers ${answer.statusCode}`));
        request.destroy();
        return;
      }
      const seen: StreamEvent[] = [];
      const taken = new Set<StreamEvent>();
      let wake: () => void = () => undefined;
      let rest = '';
      answer.setEncoding('utf8');
      answer.on('error', () => undefined);
      answer.on('data', (text: string) => {
        const blocks = (rest + text).split('\n\n');
        rest = blocks.pop() ?? '';
        seen.push(...blocks.flatMap(eventOf));
        wake();
      });
      const ended = new Promise<void>((end) => {
        answer.once('end', end);
        answer.once('close', end);
      });
      const next = async (event: string, kind?: string) => {
        for (;;) {
          const found = seen.find(
            (one) =>
              !taken.has(one) && one.event === event && (kind === undefined || one.data['kind'] === kind),
          );
          if (found) {
            taken.add(found);
            return found.data;
          }
          await new Promise<void>((woken) => (wake = woken));
        }
      };
      resolve({ headers: answer.headers, seen, next, ended, close: () => request.destroy() });
    });
    request.on('error', reject);
  });
}

function eventOf(block: string): StreamEvent[] {
  const field = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(block)?.[1];
  const event = field('event');
  return event === undefined
    ? []
    : [{ event, data: JSON.parse(field('data') ?? '{}') as StreamEvent['data'] }];
}
