/**
 * Loaded before the service (`node --import`): the service ends when the process that started it has died, even
 * by `kill -9`. The channel to the parent closes then; the service gets the same signal as on an ordered stop.
 */
const DRAIN_LIMIT_MS = 10_000;

process.on('disconnect', () => {
  process.kill(process.pid, 'SIGTERM');
  setTimeout(() => process.exit(1), DRAIN_LIMIT_MS).unref();
});
// Listening for the end of the channel must not keep a finished process alive.
process.channel?.unref();
