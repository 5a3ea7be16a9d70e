// Shows what to do when the app does not start or has stopped, and hands out the saved records.
// It needs neither the app nor the network.
(() => {
  const PREFIX = 'perchlight/';
  const DATABASE = 'perchlight';
  const SLOW_MS = 10_000;
  const DATABASE_MS = 2_000;
  const trouble = document.getElementById('trouble');
  const copy = document.getElementById('trouble-text');
  const answer = document.getElementById('trouble-answer');

  const say = (english, spanish) => (document.documentElement.lang === 'es' ? spanish : english);

  const fromLocalStorage = () => {
    const found = {};
    for (let index = 0; index < localStorage.length; index += 1) {
      const key = localStorage.key(index);
      if (key.startsWith(PREFIX)) {
        found[key] = localStorage.getItem(key);
      }
    }
    return found;
  };

  const readStore = (database, name) =>
    new Promise((resolve, reject) => {
      const rows = [];
      const cursor = database.transaction(name).objectStore(name).openCursor();
      cursor.onerror = () => reject(cursor.error);
      cursor.onsuccess = () => {
        const at = cursor.result;
        if (at === null) {
          resolve(rows);
          return;
        }
        rows.push([at.key, at.value]);
        at.continue();
      };
    });

  const openDatabase = () =>
    new Promise((resolve, reject) => {
      const request = indexedDB.open(DATABASE);
      // It was not there: looking for it must not make an empty one.
      request.onupgradeneeded = () => request.transaction.abort();
      request.onerror = () => reject(request.error);
      request.onsuccess = () => resolve(request.result);
    });

  const fromDatabase = async () => {
    const database = await openDatabase();
    const found = {};
    for (const name of database.objectStoreNames) {
      found[name] = await readStore(database, name);
    }
    database.close();
    return found;
  };

  const orWhy = async (read) => {
    const late = new Promise((resolve) => {
      setTimeout(() => resolve({ unread: 'late' }), DATABASE_MS);
    });
    try {
      return await Promise.race([read(), late]);
    } catch (error) {
      return { unread: String(error) };
    }
  };

  const gather = async () => {
    const [first, second] = await Promise.all([orWhy(async () => fromLocalStorage()), orWhy(fromDatabase)]);
    const whole = { perchlight_rescue: 1, saved_at: new Date().toISOString(), first_copy: first, second_copy: second };
    return JSON.stringify(whole, null, 1);
  };

  const save = (text) => {
    const name = `perchlight-rescue-${new Date().toISOString().slice(0, 10)}.txt`;
    const file = new File([text], name, { type: 'text/plain' });
    // An app on the home screen of an iPhone cannot download; it can share.
    if (navigator.standalone && navigator.canShare?.({ files: [file] })) {
      navigator.share({ files: [file] }).catch(() => {});
      return;
    }
    const link = document.createElement('a');
    link.href = URL.createObjectURL(file);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    answer.textContent = say(
      `Saved as ${name}, if the browser allowed it. Look for it before you go on.`,
      `Guardada como ${name}, si el navegador lo permitió. Búsquela antes de seguir.`,
    );
  };

  const show = async (why, title) => {
    if (!trouble.hidden && trouble.dataset.why !== 'slow') {
      return;
    }
    trouble.dataset.why = why;
    document.getElementById('trouble-title').textContent = title;
    window.perchlightLanguage?.(trouble);
    trouble.hidden = false;
    trouble.scrollIntoView();
    // Gathered before the tap: sharing is allowed only at once after it.
    copy.value = await gather();
  };

  document.getElementById('trouble-save').addEventListener('click', async () => save(copy.value || (await gather())));
  document.getElementById('trouble-again').addEventListener('click', () => location.reload());

  const notStarted = () => say('Perchlight did not start.', 'Perchlight no arrancó.');
  const stopped = (error) => {
    if (error instanceof WebAssembly.RuntimeError) {
      show('stopped', say('Perchlight has stopped.', 'Perchlight se ha detenido.'));
    }
  };
  window.addEventListener('perchlight-start-failed', () => show('failed', notStarted()));
  window.addEventListener('error', (event) => stopped(event.error));
  window.addEventListener('unhandledrejection', (event) => stopped(event.reason));
  setTimeout(() => {
    if (document.documentElement.dataset.started !== 'true') {
      show('slow', notStarted());
    }
  }, SLOW_MS);
})();
