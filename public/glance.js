// The page before the app: in the app's language, with the last-known text.
// Stored forms, written by the app: language and units are words with spaces between them; of the
// last-known text the first line tells of when it is, the rest is the text. The app words both: the
// browser's own wording of a date takes longer than all else that the page does before the app.
// `window.perchlightLanguage` puts the words of a part of the page into the language of the page.
(() => {
  window.perchlightLanguage = (part) => {
    if (document.documentElement.lang === 'es') {
      part.querySelectorAll('[data-es]').forEach((element) => {
        element.textContent = element.dataset.es;
      });
    }
  };

  // The same choice as the app's: the one made by hand, else the browser's first language.
  let chosen = [];
  try {
    chosen = (localStorage.getItem('perchlight/v1/setting/units') ?? '').split(' ');
  } catch {
    // Storage is blocked: the browser's language stays.
  }
  const isSpanish = chosen.includes('es') || (!chosen.includes('en') && /^es\b/i.test(navigator.language));
  document.documentElement.lang = isSpanish ? 'es' : 'en';
  window.perchlightLanguage(document.getElementById('app'));

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
  const text = stored.slice(end + 1).trim();
  if (text === '') {
    return;
  }
  document.getElementById('last-known-when').textContent = stored.slice(0, end);
  document.getElementById('last-known-text').textContent = text;
  document.getElementById('last-known').hidden = false;
})();
