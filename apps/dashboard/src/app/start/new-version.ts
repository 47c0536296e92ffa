import { useSyncExternalStore } from 'react';

const WORKER = '/service-worker.js';
/** A page that stays open for days looks for a new version now and then, ms. */
const LOOK_EVERY_MS = 3_600_000;
/** How often a page that has just opened is asked whether it has read what it shows, ms. */
const QUIET_AFTER_MS = 1_000;

let waiting: ServiceWorker | null = null;
const listeners = new Set<() => void>();

function offer(worker: ServiceWorker | null): void {
  waiting = worker;
  listeners.forEach((listener) => listener());
}

/** Offers a worker that is installed beside the one that serves this page. */
function watch(registration: ServiceWorkerRegistration): void {
  if (navigator.serviceWorker.controller !== null && registration.waiting !== null)
    offer(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const installing = registration.installing;
    installing?.addEventListener('statechange', () => {
      const isUpdate = navigator.serviceWorker.controller !== null;
      if (installing.state === 'installed' && isUpdate) offer(installing);
    });
  });
  setInterval(() => void registration.update().catch(() => undefined), LOOK_EVERY_MS);
}

/** Lets the pages open without signal; a browser does so on a secure address only. */
export function keepShell(isReading: () => boolean): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  let isReplaced = navigator.serviceWorker.controller === null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    // The first worker takes over a page that is right already; a later one comes because the person said so.
    if (isReplaced) isReplaced = false;
    else if (waiting !== null) window.location.reload();
  });
  // What the worker fetches must not take the line from what the first page reads.
  const looking = setInterval(() => {
    if (isReading()) return;
    clearInterval(looking);
    navigator.serviceWorker.register(WORKER).then(watch, () => undefined);
  }, QUIET_AFTER_MS);
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** Set where a newer version of the pages is ready: calling it changes over to it. */
export function useNewVersion(): (() => void) | null {
  const worker = useSyncExternalStore(subscribe, () => waiting);
  return worker === null ? null : () => worker.postMessage('use-new-version');
}
