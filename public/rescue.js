// All that is kept, as a file, without the app: when that doesn't start, the jobs are still to be had.
// Jobs takes the file in like a backup.

// What only the journal holds, from the last transaction on that local storage has: a killed browser had not
// written the rest there. Nothing where no database answers within two seconds.
const turns = () => new Promise(resolve => {
  setTimeout(resolve, 2000, []);
  const none = event => { event.preventDefault(); resolve([]); };
  const marks = ['a', 'b'].map(slot => Number(localStorage.getItem(`halfcase/mark/${slot}`)?.split(' ')[1]));
  const sound = marks.filter(number => number > 0);
  // Of two marks the older, as the newer may be torn.
  const mark = sound.length ? Math.min(...sound) : 0;
  const open = indexedDB.open('halfcase');
  // Where there is none, none is made.
  open.onupgradeneeded = () => open.transaction.abort();
  open.onerror = none;
  open.onsuccess = () => {
    const base = open.result;
    if (!base.objectStoreNames.contains('turns')) return resolve([]);
    const all = base.transaction('turns').objectStore('turns').getAll();
    all.onerror = none;
    all.onsuccess = () => resolve(all.result.filter(turn => turn[1] >= mark));
    base.close();
  };
}).catch(() => []);

document.getElementById('save-data').addEventListener('click', async () => {
  const names = Object.keys(localStorage).filter(name => name.startsWith('halfcase/'));
  const kept = Object.fromEntries(names.map(name => [name, localStorage.getItem(name)]));
  const text = JSON.stringify({ form: 'halfcase kept', version: 1, made: Date.now(), kept, turns: await turns() });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = 'halfcase-kept.json';
  link.click();
});
