import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openChangeLine } from './change-line.js';

class FakeSource {
  readyState = 1;
  isClosed = false;
  private readonly listeners = new Map<string, (event: { data: string }) => void>();

  addEventListener(name: string, listener: unknown): void {
    this.listeners.set(name, listener as never);
  }

  say(name: string, data: object = {}): void {
    this.listeners.get(name)?.({ data: JSON.stringify(data) });
  }

  close(): void {
    this.isClosed = true;
  }
}

let sources: FakeSource[];
const hearer = { ready: vi.fn(), changed: vi.fn(), state: vi.fn() };
const open = () => {
  sources.push(new FakeSource());
  return sources.at(-1) as never;
};
const newest = () => sources.at(-1) as FakeSource;
const refuse = () => {
  newest().readyState = 2;
  newest().say('error');
};

beforeEach(() => {
  vi.useFakeTimers();
  vi.clearAllMocks();
  sources = [];
});
afterEach(() => vi.useRealTimers());

describe('the line of changes', () => {
  it('tells what has changed, and to read anew whenever it stands again', () => {
    openChangeLine('/events', hearer, open);
    newest().say('ready');
    const change = { kind: 'run', bikeId: 'bike', riderId: 'rider' };
    newest().say('change', change);
    expect(hearer.changed).toHaveBeenCalledWith(change);
    newest().say('ready');
    expect(hearer.ready).toHaveBeenCalledTimes(2);
    expect(hearer.state).toHaveBeenLastCalledWith('live');
  });

  it('is lost while the database is away, and leaves a broken line to the browser', () => {
    openChangeLine('/events', hearer, open);
    newest().say('ready');
    newest().say('away');
    expect(hearer.state).toHaveBeenLastCalledWith('lost');
    newest().readyState = 0;
    newest().say('error');
    vi.advanceTimersByTime(600_000);
    expect(sources).toHaveLength(1);
  });

  it('opens a refused line anew, ever more rarely but never less than once a minute', () => {
    openChangeLine('/events', hearer, open);
    refuse();
    vi.advanceTimersByTime(1_999);
    expect(sources).toHaveLength(1);
    vi.advanceTimersByTime(1);
    expect(sources).toHaveLength(2);
    refuse();
    vi.advanceTimersByTime(3_999);
    expect(sources).toHaveLength(2);
    for (let count = 0; count < 10; count += 1) {
      vi.advanceTimersByTime(60_000);
      refuse();
    }
    expect(sources.length).toBeGreaterThan(10);
    newest().say('ready');
    const before = sources.length;
    refuse();
    vi.advanceTimersByTime(2_000);
    expect(sources).toHaveLength(before + 1);
  });

  it('is silent once it is closed', () => {
    const close = openChangeLine('/events', hearer, open);
    close();
    expect(newest().isClosed).toBe(true);
    refuse();
    vi.advanceTimersByTime(600_000);
    expect(sources).toHaveLength(1);
    expect(hearer.state).not.toHaveBeenCalled();
  });
});
