import { setTimeout as sleep } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import { SETUP, type TestTeam } from '../api/support/team.js';

/** A try is given up after so long, and made again elsewhere. */
const TRY_LIMIT_MS = 10_000;
const PAUSE_MS = 100;
/** How often a write that was answered is sent once more all the same, and how often it is sent twice at once. */
const REPEATED = 0.2;
const DOUBLED = 0.1;
const LINES_OF_A_FILE = 3;

/** One write and what was answered to it. */
export interface Acknowledged {
  readonly kind: WriteKind;
  /** Its Idempotency-Key; what it stores carries it as its note, name or reason. */
  readonly key: string;
  readonly answer: Readonly<Record<string, unknown>>;
}
type WriteKind = 'run' | 'file' | 'track' | 'setup';

export interface StubbornWriters {
  readonly acknowledged: readonly Acknowledged[];
  /** How many tries there were. */
  readonly tries: () => number;
  /** Of these, those that were not answered as they should be. */
  readonly failed: () => number;
  /** How the last try ended. */
  readonly last: () => string;
  /** Answers that no fault of the machine excuses. */
  readonly wrong: readonly string[];
  /** Lets each writer end the write it is at: each is sent until it is answered. */
  stop(): Promise<void>;
}

/** People who write one thing after another into a team and send each, to whichever service, until it is answered. */
export function startWriters(team: TestTeam, addresses: readonly string[], count: number): StubbornWriters {
  const acknowledged: Acknowledged[] = [];
  const wrong: string[] = [];
  let tries = 0;
  let failed = 0;
  let last = '';
  let stopped = false;

  const send = async (write: Write): Promise<Record<string, unknown> | undefined> => {
    tries += 1;
    const address = addresses[Math.floor(Math.random() * addresses.length)] ?? '';
    try {
      const answer = await fetch(`${address}/api/v1${team.path}/${write.path}`, {
        method: 'POST',
        headers: {
          cookie: team.mechanic.cookieHeader,
          'content-type': write.type,
          'idempotency-key': write.key,
        },
        body: write.body,
        signal: AbortSignal.timeout(TRY_LIMIT_MS),
      });
      const text = await answer.text();
      last = `${address}: ${answer.status} ${text.slice(0, 200)}`;
      if (answer.status === 201) return JSON.parse(text) as Record<string, unknown>;
      const mayComeAgain = answer.status === 503 && answer.headers.get('retry-after') !== null;
      if (!mayComeAgain) wrong.push(`${answer.status} to ${write.kind} ${write.key}: ${text.slice(0, 300)}`);
    } catch (error) {
      last = `${address}: ${String(error)}`;
      // No connection, or it broke before the answer was whole: nobody knows whether it was stored.
    }
    failed += 1;
    return undefined;
  };
  const sendUntilAnswered = async (write: Write): Promise<Record<string, unknown>> => {
    for (;;) {
      const twice = Math.random() < DOUBLED ? [send(write), send(write)] : [send(write)];
      const answers = (await Promise.all(twice)).filter((answer) => answer !== undefined);
      expectSame(write, answers, wrong);
      if (answers[0]) return answers[0];
      await sleep(PAUSE_MS);
    }
  };
  const writer = async (name: string): Promise<void> => {
    for (let i = 0; !stopped; i += 1) {
      const write = writeOf(team, `${name}-${i}`, i);
      const answer = await sendUntilAnswered(write);
      acknowledged.push({ kind: write.kind, key: write.key, answer });
      if (Math.random() < REPEATED) expectSame(write, [answer, await sendUntilAnswered(write)], wrong);
    }
  };
  const writers = Array.from({ length: count }, (_, i) => writer(`w${i}`));
  return {
    acknowledged,
    tries: () => tries,
    failed: () => failed,
    last: () => last,
    wrong,
    stop: async () => {
      stopped = true;
      await Promise.all(writers);
    },
  };
}

interface Write {
  readonly kind: WriteKind;
  readonly key: string;
  readonly path: string;
  readonly type: string;
  readonly body: string;
}

/** Mostly runs, and among them what else people write. */
function writeOf(team: TestTeam, key: string, turn: number): Write {
  const json = (kind: WriteKind, path: string, body: object): Write => ({
    ...{ kind, key, path, type: 'application/json', body: JSON.stringify(body) },
  });
  const day = `2026-05-${String((turn % 28) + 1).padStart(2, '0')}`;
  switch (turn % 6) {
    case 1:
      return json('track', 'tracks', { name: key, altitudeM: 900 });
    case 3:
      return json('setup', 'setups', {
        ...{ ...SETUP, bikeId: team.bike.id, reason: key },
        fork: { ...SETUP.fork, pressurePsi: 60 + (turn % 20) },
      });
    case 5: {
      const line = (number: number) => `${day},Quarry Stairs,Bike 1,3:0${number},18,${key}/${number}`;
      const lines = Array.from({ length: LINES_OF_A_FILE }, (_, i) => line(i + 1));
      const body = ['date,track,bike,time_s,fork_travel_left_mm,note', ...lines].join('\n');
      return { kind: 'file', key, path: 'runs/import', type: 'text/csv', body };
    }
    default: {
      const where = { bikeId: team.bike.id, trackId: team.track.id, day };
      return json('run', 'runs', { ...where, timeS: 180, fork: { travelLeftMm: 18 }, note: key });
    }
  }
}

/** The notes, names or reasons that `written` must have left in the database, each once. */
export const marksOf = ({ kind, key }: Acknowledged): string[] =>
  kind === 'file' ? Array.from({ length: LINES_OF_A_FILE }, (_, i) => `${key}/${i + 1}`) : [key];

/** The marks that writers have left behind in the database, sorted. */
export async function storedMarks(ask: (statement: string) => Promise<unknown[]>): Promise<string[]> {
  const rows = (await ask(
    `select note as mark from run where note like 'w%'
     union all select name from track where name like 'w%'
     union all select reason from decision where reason like 'w%'`,
  )) as { mark: string }[];
  return rows.map(({ mark }) => mark).toSorted();
}

function expectSame(write: Write, answers: readonly object[], wrong: string[]): void {
  const [first, ...others] = answers;
  if (others.some((other) => !isDeepStrictEqual(other, first)))
    wrong.push(`another answer to the repeated ${write.key}`);
}
