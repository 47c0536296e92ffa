/**
 * The service's process. Its code is loaded at once, which takes longer than anything else in a start; it begins
 * when its parent sends the settings, by when the database has been started and migrated beside it.
 * It ends when its parent has died, even by `kill -9`: the channel between them closes then.
 */
import { once } from 'node:events';

const DRAIN_LIMIT_MS = 10_000;
const built = new URL('../../dist/bundle/', import.meta.url);

process.on('disconnect', () => {
  // The same signal as on an ordered stop.
  process.kill(process.pid, 'SIGTERM');
  setTimeout(() => process.exit(1), DRAIN_LIMIT_MS).unref();
});
const settings = once(process, 'message');
await import(new URL('create-app.js', built).href);
Object.assign(process.env, ...(await settings));
// Waiting for the end of the channel must not keep a finished process alive.
process.channel?.unref();
await import(new URL('main.js', built).href);
// Whoever answers at our port may be another; only we know that it is us.
process.send?.('listening', () => undefined);
