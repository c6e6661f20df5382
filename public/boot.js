// What must work even when the app itself doesn't: the service worker is registered, and a page
// that stays empty says so. The app removes nothing here; it announces itself by an event.

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
  notice.remove();
});

// A damaged or mismatched release is replaced by a waiting one, where there is one.
document.getElementById('reload').addEventListener('click', async () => {
  const registration = await navigator.serviceWorker?.getRegistration();
  registration?.waiting?.postMessage({ kind: 'take-over' });
  setTimeout(() => location.reload(), registration?.waiting ? 2000 : 0);
});
