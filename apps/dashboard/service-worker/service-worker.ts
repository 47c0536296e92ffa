/**
 * Opens the pages without signal: keeps the entry page and what the rider's pages load, by the hash in their names.
 * It never touches the API: what was read and what waits to be sent is kept by the pages themselves, by account.
 */
declare const self: ServiceWorkerGlobalScope;

/** Filled in by the build: the addresses of the rider's files, and a name that changes with any of them. */
declare const SHELL_FILES: readonly string[];
declare const SHELL_VERSION: string;

const ENTRY = '/';
const PREFIX = 'shell-';
/** The version before stays for the tabs that are still open on it. */
const VERSIONS_KEPT = 2;

const current = () => caches.open(`${PREFIX}${SHELL_VERSION}`);

async function install(): Promise<void> {
  const cache = await current();
  await cache.addAll([ENTRY, ...SHELL_FILES]);
}

async function activate(): Promise<void> {
  // In the order in which they were made.
  const shells = (await caches.keys()).filter((name) => name.startsWith(PREFIX));
  await Promise.all(shells.slice(0, -VERSIONS_KEPT).map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** Built files never change under their name: the first answer is good for ever. */
async function file(request: Request): Promise<Response> {
  const kept = await caches.match(request);
  if (kept !== undefined) return kept;
  const answer = await fetch(request);
  if (answer.ok) await (await current()).put(request, answer.clone());
  return answer;
}

/** Every page is the entry page; its own router does the rest. */
async function page(request: Request): Promise<Response> {
  const kept = await (await current()).match(ENTRY);
  return kept ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));

self.addEventListener('message', (event) => {
  // Said by the person, never by us: a new version must not take the form away that is being filled in.
  if (event.data === 'use-new-version') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(page(request));
  else if (pathname.startsWith('/assets/') || SHELL_FILES.includes(pathname))
    event.respondWith(file(request));
});

export {};
