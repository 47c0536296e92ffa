import { commandOf, isRunning, parentOf } from './table.mjs';

/** How often we look whether npm, which started us, is still there. */
const NPM_CHECK_MS = 1000;

/**
 * Aborts when we are asked to stop: Ctrl-C (which a terminal and npm may both deliver), SIGTERM, a closed
 * terminal, or the end of the npm that we are the script of.
 * @returns {AbortSignal}
 */
export function stopSignal() {
  const stop = new AbortController();
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(name, () => stop.abort());
  // A closed terminal must not end us by a failed write before everything is shut down.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined);
  const npm = npmAbove();
  if (npm) setInterval(() => isRunning(npm) || stop.abort(), NPM_CHECK_MS).unref();
  return stop.signal;
}

/** npm runs a script either directly or through a shell. */
function npmAbove() {
  if (!process.env.npm_lifecycle_event) return undefined;
  return [process.ppid, parentOf(process.ppid)].find((pid) => /^npm\b/.test(commandOf(pid)));
}
