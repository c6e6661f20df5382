// What must work even when the app itself doesn't: a page that stays empty, or stops later, says so and
// is mended; the service worker is registered once the app has started. The app announces its start by an
// event.

// Where the browser has Trusted Types, no text becomes a script, nor markup that could bring one; the
// worker's own is the only address that does.
globalThis.trustedTypes?.createPolicy('default', {
  createHTML: text => (/<(script|iframe|object|embed|base|meta)\b|\son\w+\s*=|javascript:/i.test(text) ? null : text),
  createScriptURL: address => (address === './sw.js' ? address : null),
});

const page = document.documentElement;
const notice = document.getElementById('not-started');
const worker = navigator.serviceWorker;
const said = words => { notice.querySelector('p').textContent = words; };
const show = () => {
  notice.className = 'now';
  notice.hidden = false;
  // What lies beneath is dead.
  for (const frame of document.querySelectorAll('.frame')) frame.inert = true;
  notice.querySelector('h1').focus();
};

// The frame that stands until the app does is painted in the look that was chosen, with the plate's place
// where there is one.
try { page.dataset.look = localStorage.getItem('halfcase-look') ?? ''; } catch {}
page.dataset.at = location.hash.slice(1).split('/')[0];

// Inside a page of others its keys could be pressed by them: there it stays shut.
if (top !== self) {
  notice.querySelector('h1').textContent = 'Halfcase is shut here';
  said('Another page shows it inside itself. Open it by its own address.');
  for (const key of notice.querySelectorAll('button')) key.hidden = true;
  show();
}

// Whether a worker is one of ours: nothing at all, which some networks give in its place, is a worker too.
const speaks = one => new Promise(resolve => {
  worker.addEventListener('message', ({ source, data }) => source === one && data?.kind === 'this' && resolve(true));
  one.postMessage({ kind: 'which' });
  setTimeout(resolve, 8000, false);
});

// One that waits and is none is asked for again; one in charge that is none keeps nothing, and gives way at once.
async function vet(here) {
  const { active, waiting } = here;
  const [serves, comes] = await Promise.all([active, waiting].map(one => one && speaks(one)));
  if (waiting && !comes) await here.update();
  if (comes && !serves) waiting.postMessage({ kind: 'take-over' });
}

// Says whether the worker goes back to the release before this one.
const goneBack = () => new Promise(resolve => {
  worker.addEventListener('message', ({ data }) => data?.kind === 'back' && resolve(data.back));
  worker.controller.postMessage({ kind: 'failed' });
  setTimeout(resolve, 8000, false);
});

// A release that doesn't start gives way: to a newer one that waits, to the one before, or to the same
// fetched anew, past every copy that may be spoilt.
async function mend() {
  const here = await worker?.getRegistration();
  if (here?.waiting && (await speaks(here.waiting))) {
    here.waiting.postMessage({ kind: 'take-over' });
    return void setTimeout(() => location.reload(), 2000);
  }
  if (worker?.controller && (await goneBack())) return location.reload();
  // Before anything is thrown away: there is a network, and it gives our own. Of the files some may be gone,
  // where there is a newer release.
  const script = answer => answer.ok && /javascript/.test(answer.headers.get('content-type'));
  const files = [...document.querySelectorAll('script[src], link[href]')].map(from => from.src || from.href);
  const [own, page] = await Promise.all([
    fetch('./sw.js', { cache: 'reload' }).then(script, () => false),
    fetch('./', { cache: 'reload' }).then(answer => answer.ok, () => false),
    ...files.map(file => fetch(file, { cache: 'reload' }).catch(() => {})),
  ]);
  if (!own || !page) return said('Your jobs are kept on this phone. Mending needs the network: connect, then mend again.');
  await here?.unregister();
  const ours = `halfcase ${new URL('./', location).pathname} `;
  for (const name of (await globalThis.caches?.keys()) ?? []) if (name.startsWith(ours)) await caches.delete(name);
  location.reload();
}

// By itself once a visit; after that by the key.
const TRIED = 'halfcase-mended';
const fails = () => {
  show();
  try {
    if (sessionStorage.getItem(TRIED)) return;
    sessionStorage.setItem(TRIED, '1');
  } catch { return; }
  mend().catch(() => {});
};

// Captured, as a script that can't be fetched says so only to its own element.
addEventListener('error', fails, true);
addEventListener('unhandledrejection', fails);
addEventListener('halfcase-started', () => {
  removeEventListener('error', fails, true);
  removeEventListener('unhandledrejection', fails);
  addEventListener('error', stopped);
  addEventListener('unhandledrejection', stopped);
  if (top !== self) return;
  notice.hidden = true;
  worker?.controller?.postMessage({ kind: 'started' });
  worker?.register('./sw.js', { updateViaCache: 'none' }).then(here => {
    const look = () => vet(here).catch(() => {});
    here.addEventListener('updatefound', () => here.installing.addEventListener('statechange', look));
    look();
  }).catch(error => {
    // Plain HTTP on a local network, or a private window: the app works, but only with a network.
    console.info('Halfcase will not work offline here:', error.message);
  });
});

// Kept even when the phone runs out of room, where the browser grants it. Some ask the user: at the
// first touch it is clear what for.
addEventListener('pointerup', () => navigator.storage?.persist?.().catch(() => {}), { once: true });

// A fault in the WASM leaves the page standing there, deaf to every touch.
const stopped = event => {
  if ((event.error ?? event.reason) instanceof WebAssembly.RuntimeError) {
    notice.querySelector('h1').textContent = 'Halfcase has stopped';
    show();
  }
};

document.getElementById('reload').addEventListener('click', () => location.reload());
document.getElementById('mend').addEventListener('click', () => mend().catch(error => said(error.message)));
