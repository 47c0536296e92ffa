/** What the service says has changed in the team: what kind of thing, and whose; never its contents. */
export interface TeamChange {
  readonly kind: string;
  readonly bikeId: string | null;
  readonly riderId: string | null;
}

/** `live`: changes are heard as they happen; `lost`: they are not, and the page has to ask by itself. */
export type LineState = 'live' | 'lost';

interface Hearer {
  /** The line stands: nothing of before is told again, so what was read may be old. */
  readonly ready: () => void;
  readonly changed: (change: TeamChange) => void;
  readonly state: (state: LineState) => void;
}

/** What is used of the browser's own `EventSource`, so that a test can be one. */
type Source = Pick<EventSource, 'addEventListener' | 'close' | 'readyState'>;

const FIRST_WAIT_MS = 2_000;
const LONGEST_WAIT_MS = 60_000;
const CLOSED = 2;

/**
 * Hears the events at `address` until the returned function is called. A broken line the browser mends itself; one that
 * was refused (a service in trouble, a proxy) it gives up, and then it is opened anew here, ever more rarely.
 */
export function openChangeLine(
  address: string,
  hearer: Hearer,
  open: (address: string) => Source = (url) => new EventSource(url),
): () => void {
  let source: Source;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let wait = FIRST_WAIT_MS;
  let isOver = false;

  const listen = () => {
    source = open(address);
    source.addEventListener('ready', () => {
      wait = FIRST_WAIT_MS;
      hearer.state('live');
      hearer.ready();
    });
    source.addEventListener('away', () => hearer.state('lost'));
    source.addEventListener('change', (event) =>
      hearer.changed(JSON.parse((event as MessageEvent<string>).data) as TeamChange),
    );
    source.addEventListener('error', () => {
      if (isOver) return;
      hearer.state('lost');
      if (source.readyState !== CLOSED) return;
      timer = setTimeout(listen, wait);
      wait = Math.min(2 * wait, LONGEST_WAIT_MS);
    });
  };
  listen();

  return () => {
    isOver = true;
    clearTimeout(timer);
    source.close();
  };
}
