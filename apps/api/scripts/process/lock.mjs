import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { isRunning, startOf } from './table.mjs';

const RETRY_MS = 200;

/** @typedef {{ pid: number, start: string, note: string }} Holder */
/** @typedef {{ note(text: string): void, release(): void }} Lock */

/**
 * Takes the lock file, or returns who holds it. A lock whose process has died counts as free.
 * @param {string} file
 * @returns {{ lock: Lock } | { heldBy: Holder }}
 */
export function tryLock(file) {
  mkdirSync(dirname(file), { recursive: true });
  const own = { pid: process.pid, start: startOf(process.pid), note: '' };
  while (!create(file, own)) {
    const holder = read(file);
    if (holder && isAlive(holder)) return { heldBy: holder };
    removeDead(file);
  }
  return {
    lock: {
      note: (text) => renameSync(write(file, { ...own, note: text }), file),
      release: () => rmSync(file, { force: true }),
    },
  };
}

/**
 * Runs `work` while holding the lock, after waiting for whoever holds it.
 * @template T
 * @param {string} file
 * @param {() => Promise<T>} work
 * @param {AbortSignal} signal
 * @returns {Promise<T>}
 */
export async function withLock(file, work, signal) {
  let taken = tryLock(file);
  while (!('lock' in taken)) {
    await sleep(RETRY_MS, undefined, { signal });
    taken = tryLock(file);
  }
  try {
    return await work();
  } finally {
    taken.lock.release();
  }
}

/** @param {Holder} holder */
function isAlive(holder) {
  return isRunning(holder.pid) && startOf(holder.pid) === holder.start;
}

/** A link appears with its content or not at all, so no reader ever sees half a lock. @param {string} file @param {Holder} own */
function create(file, own) {
  const draft = write(file, own);
  try {
    linkSync(draft, file);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  } finally {
    rmSync(draft);
  }
}

/** Another process may have replaced the dead lock in the meantime: a living one is put back. @param {string} file */
function removeDead(file) {
  const aside = `${file}.${process.pid}.aside`;
  try {
    renameSync(file, aside);
    const holder = read(aside);
    if (holder && isAlive(holder)) linkSync(aside, file);
  } catch (error) {
    if (!['ENOENT', 'EEXIST'].includes(codeOf(error))) throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}

/** @param {string} file @param {Holder} holder */
function write(file, holder) {
  const draft = `${file}.${process.pid}.draft`;
  writeFileSync(draft, JSON.stringify(holder));
  return draft;
}

/** @param {string} file @returns {Holder | undefined} */
function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}

/** @param {unknown} error */
function codeOf(error) {
  return /** @type {NodeJS.ErrnoException} */ (error).code ?? '';
}
