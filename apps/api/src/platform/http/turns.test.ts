import { expect, it } from 'vitest';
import { Turns } from './turns.js';

/** Notes in which order turns begin. */
function begin(turns: Turns, begun: string[], owner: string, name: string): void {
  const turn = turns.begin(owner);
  if (turn === 'now') begun.push(name);
  else if (turn !== 'full') void turn.then(() => begun.push(name));
}
const settle = () => new Promise(setImmediate);

it('lets so many of one owner’s begin and the rest wait in order, whatever others do', async () => {
  const turns = new Turns(2, 10);
  const begun: string[] = [];
  for (const name of ['a1', 'a2', 'a3', 'a4']) begin(turns, begun, 'a', name);
  begin(turns, begun, 'b', 'b1');
  await settle();
  expect(begun).toEqual(['a1', 'a2', 'b1']);
  expect(turns.waiting).toBe(2);
  turns.end('a');
  await settle();
  expect(begun).toEqual(['a1', 'a2', 'b1', 'a3']);
  turns.end('b');
  turns.end('a');
  await settle();
  expect(begun).toEqual(['a1', 'a2', 'b1', 'a3', 'a4']);
});

it('says where an owner’s line is full, and has room again afterwards', async () => {
  const turns = new Turns(1, 1);
  expect(turns.begin('a')).toBe('now');
  const second = turns.begin('a');
  expect(turns.begin('a')).toBe('full');
  expect(turns.begin('b')).toBe('now');
  turns.end('a');
  await second;
  expect(turns.begin('a')).toBeInstanceOf(Promise);
});

it('forgets who asks for nothing, and takes no end for a turn that nobody has', () => {
  const turns = new Turns(2, 10);
  for (let i = 0; i < 1_000; i += 1) {
    turns.begin(`owner ${i}`);
    turns.end(`owner ${i}`);
  }
  expect(turns.size).toBe(0);
  turns.end('nobody');
  expect(turns.begin('nobody')).toBe('now');
  expect(turns.size).toBe(1);
});
