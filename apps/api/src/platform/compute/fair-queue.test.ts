import { expect, it } from 'vitest';
import { FairQueue } from './fair-queue.js';

function queueOf(...added: readonly [string, string][]): FairQueue<string> {
  const queue = new FairQueue<string>();
  for (const [owner, item] of added) queue.add(owner, item);
  return queue;
}

const drain = (queue: FairQueue<string>): string[] => {
  const items: string[] = [];
  for (let item = queue.next(); item !== undefined; item = queue.next()) items.push(item);
  return items;
};

it('lets each owner in turn have one thing done, each owner’s own in their order', () => {
  const queue = queueOf(['a', 'a1'], ['a', 'a2'], ['a', 'a3'], ['b', 'b1'], ['c', 'c1'], ['b', 'b2']);
  expect(drain(queue)).toEqual(['a1', 'b1', 'c1', 'a2', 'b2', 'a3']);
});

it('lets who comes later wait for one thing of each, not for all that one has asked', () => {
  const queue = queueOf(['a', 'a1'], ['a', 'a2'], ['a', 'a3']);
  expect(queue.next()).toBe('a1');
  queue.add('b', 'b1');
  expect(drain(queue)).toEqual(['a2', 'b1', 'a3']);
});

it('tells how much waits, and of whom', () => {
  const queue = queueOf(['a', 'a1'], ['a', 'a2'], ['b', 'b1']);
  expect([queue.size, queue.waitingOf('a'), queue.waitingOf('b'), queue.waitingOf('c')]).toEqual([
    3, 2, 1, 0,
  ]);
  drain(queue);
  expect([queue.size, queue.waitingOf('a'), queue.next()]).toEqual([0, 0, undefined]);
});
