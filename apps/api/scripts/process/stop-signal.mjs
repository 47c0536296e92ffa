/** How often we look whether npm, which started us, is still there. */
const PARENT_CHECK_MS = 500;

/**
 * Aborts when we are asked to stop: Ctrl-C (which a terminal and npm may both deliver), SIGTERM, a closed
 * terminal, or the end of the `npm start` that we are the script of.
 * @returns {AbortSignal}
 */
export function stopSignal() {
  const stop = new AbortController();
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(name, () => stop.abort());
  // A closed terminal must not end us by a failed write before everything is shut down.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined);
  if (process.env.npm_lifecycle_event) {
    const parent = process.ppid;
    setInterval(() => process.ppid === parent || stop.abort(), PARENT_CHECK_MS).unref();
  }
  return stop.signal;
}
