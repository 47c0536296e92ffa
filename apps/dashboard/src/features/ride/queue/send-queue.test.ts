import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ApiProblem, NoConnection } from '../../../shared/http/problem.js';
import { outcomeOf, type SendOutcome } from './answer.js';
import type { QueuedRun } from './queued-run.js';
import { sendQueue } from './send-queue.js';

const refusal = { status: 422, title: 'Not allowed', detail: '', fields: [] };
const run = (key: string, change: Partial<QueuedRun> = {}): QueuedRun => ({
  key,
  account: 'me',
  teamId: 'team',
  loggedAt: key,
  message: { bikeId: 'bike' },
  names: { bike: '', track: '' },
  refusal: null,
  ...change,
});

/** A phone whose line answers as it is told, and then not any more. */
function phone(runs: readonly QueuedRun[], outcomes: readonly SendOutcome[]) {
  const kept = new Map(runs.map((one) => [one.key, one]));
  const sent: string[] = [];
  const left = [...outcomes];
  return {
    kept,
    sent,
    parts: {
      all: async () => [...kept.values()],
      put: async (one: QueuedRun) => void kept.set(one.key, one),
      remove: async (key: string) => void kept.delete(key),
      send: async (one: QueuedRun): Promise<SendOutcome> => {
        sent.push(one.key);
        return left.shift() ?? { kind: 'unsure' };
      },
    },
  };
}

const anyOutcome = fc.constantFrom<SendOutcome>(
  { kind: 'taken' },
  { kind: 'unsure' },
  { kind: 'signed-out' },
  { kind: 'refused', refusal },
);

describe('sending what waits on the phone', () => {
  it('lets a run go only after the service has taken it, whatever the line does', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyOutcome, { maxLength: 12 }), async (outcomes) => {
        const keys = Array.from({ length: 8 }, (_, index) => String(index));
        const { kept, sent, parts } = phone(
          keys.map((key) => run(key)),
          outcomes,
        );
        await sendQueue('me', parts);
        const taken = sent.filter((_, index) => outcomes[index]?.kind === 'taken');
        expect([...kept.keys(), ...taken].toSorted()).toEqual(keys);
        expect(new Set(taken).size).toBe(taken.length);
      }),
    );
  });

  it('sends in the order of logging, and stops where the line does', async () => {
    const { sent, parts } = phone([run('3'), run('1'), run('2')], [{ kind: 'taken' }, { kind: 'unsure' }]);
    expect(await sendQueue('me', parts)).toBe('no-line');
    expect(sent).toEqual(['1', '2']);
  });

  it('keeps a refused run with its reason, and goes on with the next', async () => {
    const { kept, parts } = phone([run('1'), run('2')], [{ kind: 'refused', refusal }, { kind: 'taken' }]);
    expect(await sendQueue('me', parts)).toBe('done');
    expect([...kept.values()]).toEqual([run('1', { refusal })]);
  });

  it('leaves alone what is refused already, and what another account has logged here', async () => {
    const { sent, parts } = phone([run('1', { refusal }), run('2', { account: 'another' })], []);
    expect(await sendQueue('me', parts)).toBe('done');
    expect(sent).toEqual([]);
  });
});

describe('what an answer says about a run', () => {
  const problem = (status: number, code = 'run.some-code') =>
    new ApiProblem(status, code, 'Title', 'Detail', [], null);

  it.each([
    ['no connection', new NoConnection('gone')],
    ['an answer that is no JSON', new SyntaxError('Unexpected token <')],
    ['a service in trouble', problem(503)],
    ['too many requests', problem(429)],
    ['a proxy or the login page of a public network', problem(403, 'unknown')],
  ])('%s: it may have arrived or not, and is sent again', (_, error) => {
    expect(outcomeOf(error)).toEqual({ kind: 'unsure' });
  });

  it('tells the end of the session from a refusal of the run', () => {
    expect(outcomeOf(problem(401))).toEqual({ kind: 'signed-out' });
    expect(outcomeOf(problem(422)).kind).toBe('refused');
    expect(outcomeOf(problem(409)).kind).toBe('refused');
  });
});
