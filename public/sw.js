// Keeps one release, whole, so that the app starts without a network.
//
// The build puts the release's id and all its files' names here. Everything is fetched before the
// release counts as installed, served from that store alone, and never added to afterwards: a page
// of one release can't meet a part of another. A new release waits until it is told to take over.

const BUILD = 'BUILD';
const FILES = ['FILES'];

// The folder is part of the name: other copies of this app on the same host keep their own stores.
const STORES = `halfcase ${new URL(registration.scope).pathname} `;
const STORE = STORES + BUILD;
const PAGE = new URL('./', registration.scope);

async function install() {
  const store = await caches.open(STORE);
  // 'reload' goes past the browser's HTTP cache, which may hold files of an older release.
  // One missing file rejects the whole, and the old release stays.
  await store.addAll(FILES.map(name => new Request(new URL(name, registration.scope), { cache: 'reload' })));
}

async function activate() {
  const names = await caches.keys();
  await Promise.all(names.filter(name => name.startsWith(STORES) && name !== STORE).map(name => caches.delete(name)));
  // On the first visit the page was there before this worker.
  await clients.claim();
}

async function answer(request) {
  const store = await caches.open(STORE);
  // A file opened by itself, or another app in a folder below, is not our page.
  const { pathname } = new URL(request.url);
  const wanted = pathname === `${PAGE.pathname}index.html` ? PAGE : request;
  const kept = await store.match(wanted, { ignoreSearch: true, ignoreVary: true });
  return kept ?? fetch(request);
}

addEventListener('install', event => event.waitUntil(install()));
addEventListener('activate', event => event.waitUntil(activate()));

addEventListener('fetch', event => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(registration.scope)) event.respondWith(answer(event.request));
});

// A notification leads to the app, opened again where it was closed.
async function toThePage() {
  const [open] = await clients.matchAll({ type: 'window' });
  await (open ? open.focus() : clients.openWindow(PAGE));
}

addEventListener('notificationclick', event => {
  event.notification.close();
  event.waitUntil(toThePage());
});

// The page's words to its worker. These two stay as they are: an old page must be able to speak
// to a new worker.
addEventListener('message', event => {
  if (event.data?.kind === 'take-over') event.waitUntil(skipWaiting());
  if (event.data?.kind === 'which') event.source?.postMessage({ kind: 'this', build: BUILD });
});
