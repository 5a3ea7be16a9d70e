// Shows the last-known text before the app has started, and when it does not start.
// Stored form, written by the app: the first line is the time (ISO 8601), the rest is the text.
(() => {
  let stored = null;
  try {
    stored = localStorage.getItem('perchlight/v1/setting/glance');
  } catch {
    return;
  }
  const end = stored === null ? -1 : stored.indexOf('\n');
  if (end < 0) {
    return;
  }
  const when = new Date(stored.slice(0, end));
  const text = stored.slice(end + 1).trim();
  if (text === '' || Number.isNaN(when.getTime())) {
    return;
  }
  const words = when.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
  document.getElementById('last-known-when').textContent = `As of ${words}`;
  document.getElementById('last-known-text').textContent = text;
  document.getElementById('last-known').hidden = false;
})();
