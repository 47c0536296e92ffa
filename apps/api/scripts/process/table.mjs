import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

const hasProc = existsSync('/proc/self/stat');

/** @param {number} pid */
export function isRunning(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    // EPERM: it runs, under another account.
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
  return stateOf(pid) !== 'Z';
}

/**
 * When the process started, in the system's own words: with the pid it names one process for good, while a
 * pid alone is given out again. Empty when there is no such process.
 * @param {number} pid
 */
export function startOf(pid) {
  if (hasProc) return statFields(pid)[19] ?? '';
  return ps(pid, 'lstart');
}

/** @param {number} pid */
export function parentOf(pid) {
  return Number(hasProc ? statFields(pid)[1] : ps(pid, 'ppid'));
}

/** The command line of a process, empty when there is none. @param {number} pid */
export function commandOf(pid) {
  if (!hasProc) return ps(pid, 'args');
  return readOrEmpty(`/proc/${pid}/cmdline`).replaceAll('\0', ' ');
}

/** @param {number} pid */
function stateOf(pid) {
  return hasProc ? statFields(pid)[0] : ps(pid, 'stat').slice(0, 1);
}

/** The fields after the command's name, which may itself hold spaces and brackets. @param {number} pid */
function statFields(pid) {
  const text = readOrEmpty(`/proc/${pid}/stat`);
  return text.slice(text.lastIndexOf(')') + 2).split(' ');
}

/** @param {string} file */
function readOrEmpty(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

/** @param {number} pid @param {string} field */
function ps(pid, field) {
  try {
    return execFileSync('ps', ['-o', `${field}=`, '-p', String(pid)], { encoding: 'utf8' }).trim();
  } catch {
    return '';
  }
}
