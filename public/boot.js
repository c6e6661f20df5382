// What must work even when the app itself doesn't: the service worker is registered, and a page
// that stays empty, or stops later, says so. The app announces its start by an event.

if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' }).catch(error => {
    // Plain HTTP on a local network, or a private window: the app works, but only with a network.
    console.info('Halfcase will not work offline here:', error.message);
  });
}

const notice = document.getElementById('not-started');
const show = () => { notice.hidden = false; };
const patience = setTimeout(show, 12000);

// Captured, as a script that can't be fetched says so only to its own element.
addEventListener('error', show, true);
addEventListener('unhandledrejection', show);
addEventListener('TrunkApplicationStarted', () => {
  clearTimeout(patience);
  removeEventListener('error', show, true);
  removeEventListener('unhandledrejection', show);
  notice.hidden = true;
  addEventListener('error', stopped);
  addEventListener('unhandledrejection', stopped);
});

// Kept even when the phone runs out of room, where the browser grants it. Some ask the user: at the
// first touch it is clear what for.
addEventListener('pointerup', () => navigator.storage?.persist?.().catch(() => {}), { once: true });

// A fault in the WASM leaves the page standing there, deaf to every touch.
const stopped = event => {
  if ((event.error ?? event.reason) instanceof WebAssembly.RuntimeError) {
    notice.querySelector('h1').textContent = 'Halfcase has stopped';
    notice.hidden = false;
  }
};

// A damaged or mismatched release is replaced by a waiting one, where there is one.
document.getElementById('reload').addEventListener('click', async () => {
  const registration = await navigator.serviceWorker?.getRegistration();
  registration?.waiting?.postMessage({ kind: 'take-over' });
  setTimeout(() => location.reload(), registration?.waiting ? 2000 : 0);
});
