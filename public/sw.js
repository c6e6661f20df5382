// Keeps one release, whole, so that the app starts without a network.
//
// The build puts the release's id here, and every file's name with its SHA-256. Everything is fetched and
// compared before the release counts as installed, served from that store alone, and never added to
// afterwards: a page of one release can't meet a part of another, nor a login page that a network gave in
// the place of a file. A new release waits until it is told to take over, and the one before is kept until
// the new one has started once.

const BUILD = 'BUILD';
const FILES = ['FILES'];

// The folder is part of the name: other copies of this app on the same host keep their own stores.
const STORES = `halfcase ${new URL(registration.scope).pathname} `;
const STORE = STORES + BUILD;
const PAGE = new URL('./', registration.scope);

async function sum(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, byte => byte.toString(16).padStart(2, '0')).join('');
}

// One file of the release, byte for byte, asked of the server whether what the browser has is still good.
async function fetched(name, wanted) {
  const request = new Request(new URL(name, registration.scope), { cache: 'no-cache' });
  const answer = await fetch(request);
  const bytes = await answer.arrayBuffer();
  if (!answer.ok || (await sum(bytes)) !== wanted) throw new Error(`${name} is not the release's own`);
  const headers = new Headers(answer.headers);
  // These told of the bytes on the wire.
  headers.delete('content-encoding');
  headers.delete('content-length');
  return [request, new Response(bytes, { headers })];
}

async function install() {
  // One file that is missing or spoilt rejects the whole, and the old release stays.
  const files = await Promise.all(FILES.map(([name, wanted]) => fetched(name, wanted)));
  const store = await caches.open(STORE);
  const put = all => Promise.all(all.map(([request, file]) => store.put(request, file)));
  const isPage = ([request]) => request.url === PAGE.href;
  try {
    // The page last: a store that has it is whole.
    await put(files.filter(file => !isPage(file)));
    await put(files.filter(isPage));
  } catch (error) {
    await caches.delete(STORE);
    throw error;
  }
}

const stores = async () => (await caches.keys()).filter(name => name.startsWith(STORES));

// What stood when this release took over; a name of no file, so that no request finds it.
const BEFORE = new URL('./the-release-before', registration.scope);

async function activate() {
  // Spoilt since it was installed, or never whole: once more, while the one before still serves.
  const store = await caches.open(STORE);
  if ((await store.keys()).length < FILES.length) await install().catch(() => caches.delete(STORE));
  const before = (await stores()).filter(name => name !== STORE);
  if (before.length && (await caches.has(STORE))) await store.put(BEFORE, Response.json(before));
  // On the first visit the page was there before this worker.
  await clients.claim();
}

// The release is good: those before it may go, but not one that waits behind it.
async function started() {
  if (!(await caches.has(STORE))) return;
  const store = await caches.open(STORE);
  const before = await (await store.match(BEFORE))?.json();
  await Promise.all((before ?? []).map(name => caches.delete(name)));
  await store.delete(BEFORE);
}

// The release did not start. Where the one before is still here, that one is served from now on.
async function failed() {
  const given = await serving();
  const others = (await whole()).filter(name => name !== given);
  if (!given || !others.length) return false;
  await caches.delete(given);
  return true;
}

async function answer(request) {
  // A file opened by itself, or another app in a folder below, is not our page.
  const { pathname } = new URL(request.url);
  const wanted = pathname === `${PAGE.pathname}index.html` ? PAGE : request;
  const from = await serving();
  const kept = from && (await found(from, wanted));
  return kept ?? fetch(request);
}

// Never by opening a store: that would make one anew which has just been given up.
const found = (store, request) =>
  caches.match(request, { cacheName: store, ignoreSearch: true, ignoreVary: true }).catch(() => undefined);

// The releases that are here to their last file, the oldest first.
async function whole() {
  const all = await stores();
  const pages = await Promise.all(all.map(name => found(name, PAGE)));
  return all.filter((_, at) => pages[at]);
}

// The release that is served: this worker's own, or where that was given up the one before.
async function serving() {
  const all = await whole();
  return all.includes(STORE) ? STORE : all.at(-1);
}

addEventListener('install', event => event.waitUntil(install()));
addEventListener('activate', event => event.waitUntil(activate()));

addEventListener('fetch', event => {
  const { method, url, cache } = event.request;
  // Mending asks past every copy.
  if (cache === 'reload') return;
  if (method === 'GET' && url.startsWith(registration.scope)) event.respondWith(answer(event.request));
});

// What is new in this release, for the page of the one before.
const news = async () => (await found(STORE, new URL('./news.txt', registration.scope)))?.text();

// A notification leads to the app, opened again where it was closed.
async function toThePage() {
  const [open] = await clients.matchAll({ type: 'window' });
  await (open ? open.focus() : clients.openWindow(PAGE));
}

addEventListener('notificationclick', event => {
  event.notification.close();
  event.waitUntil(toThePage());
});

// The page's words to its worker. They stay as they are: an old page must be able to speak to a new worker.
addEventListener('message', event => {
  const { kind } = event.data ?? {};
  if (kind === 'take-over') event.waitUntil(skipWaiting());
  if (kind === 'which') event.source?.postMessage({ kind: 'this', build: BUILD });
  if (kind === 'news') event.waitUntil(news().then(words => event.source?.postMessage({ kind, words })));
  if (kind === 'started') event.waitUntil(started());
  if (kind === 'failed') event.waitUntil(failed().then(back => event.source?.postMessage({ kind: 'back', back })));
});
