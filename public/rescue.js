// All that is kept, as a file, without the app: when that doesn't start, the jobs are still to be had.
// Jobs takes the file in like a backup.
document.getElementById('save-data').addEventListener('click', () => {
  const names = Object.keys(localStorage).filter(name => name.startsWith('halfcase/'));
  const kept = Object.fromEntries(names.map(name => [name, localStorage.getItem(name)]));
  const text = JSON.stringify({ form: 'halfcase kept', version: 1, made: Date.now(), kept });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = 'halfcase-kept.json';
  link.click();
});
