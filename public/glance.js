// The page before the app: in the app's language, with what was known of the chick when the app was left.
// Stored forms, written by the app: language and units are words with spaces between them; for the rest see
// src/store/glance_text.rs. The app words everything: the browser's own wording of a date takes longer than all
// else that the page does before the app. Nothing stored is ever put in as anything but text. A tap on a link
// changes the address, which the app opens when it comes.
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
  const lines = (stored ?? '').split('\n').map((line) => line.split('\t'));
  const all = (name) => lines.filter(([found]) => found === name).map(([, ...texts]) => texts);
  const one = (name) => all(name)[0]?.[0] ?? '';
  const seconds = (name) => Number(one(name) || NaN);
  const [at, until, due] = ['at', 'until', 'due'].map(seconds);
  if (one('glance') !== '1' || one('answer') === '' || Number.isNaN(at)) {
    return;
  }
  const part = (name) => document.getElementById(`last-known-${name}`);
  const add = (place, tag, text) => {
    const made = document.createElement(tag);
    made.textContent = text;
    place.append(made);
    return made;
  };

  ['as-of', 'name'].forEach((name) => (part(name).textContent = one(name)));
  const [[level, word]] = all('level');
  part('level').dataset.level = level;
  part('level').textContent = word;
  ['answer', 'known'].forEach((name) => all(name).forEach(([text]) => add(part(name), 'p', text)));
  all('aid').forEach(([seen, act]) => {
    const item = add(part('aid'), 'li', '');
    add(item, 'strong', seen);
    item.append(` ${act}`);
  });
  all('call').forEach(([who, number, link]) => {
    if (/^tel:\+?\d+$/.test(link)) {
      const call = add(part('calls'), 'a', '');
      call.className = 'call';
      call.href = link;
      add(call, 'span', who).className = 'call__who';
      add(call, 'span', number).className = 'call__number';
    }
  });

  const span = (minutes) => {
    const [whole, rest] = [Math.floor(minutes / 60), minutes % 60];
    return [whole > 0 ? `${whole}\u00a0h` : '', rest > 0 || whole === 0 ? `${rest}\u00a0min` : ''].join(' ').trim();
  };
  const shown = document.getElementById('last-known');
  // An answer is shown only as long as it is sure to be the same, and not by a clock that was set back.
  const tick = () => {
    const now = Math.floor(Date.now() / 1000);
    const isOver = now > until || now < at - 60;
    ['level', 'countdown', 'answer'].forEach((name) => (part(name).hidden = isOver));
    part('over').hidden = !isOver;
    part('countdown').textContent = Number.isNaN(due) ? '' : span(Math.max(0, Math.ceil((due - now) / 60)));
  };
  tick();
  shown.hidden = false;
  document.querySelector('.first__about').hidden = true;
  // The app then begins with the heading of the screen that was asked for.
  shown.addEventListener('click', () => (shown.dataset.tapped = 'true'));
  const clock = setInterval(() => (shown.isConnected ? tick() : clearInterval(clock)), 1000);
})();
