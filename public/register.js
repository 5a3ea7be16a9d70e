// Registers the offline worker and tells the app two things:
// `perchlight-offline-ready` on window, once, when everything is kept for use without a network;
// `perchlight-update-ready` on window, when a new version waits. `window.perchlightUpdate.apply()`
// then changes to it and loads the page again, once. Nothing changes before that call.
(() => {
  if (!('serviceWorker' in navigator)) {
    return;
  }
  const workers = navigator.serviceWorker;
  const DAY_MS = 86_400_000;
  let checkedAt = Date.now();

  const offerUpdate = (registration) => {
    const apply = () => {
      if (registration.waiting === null) {
        // Another tab has already changed to it.
        location.reload();
        return;
      }
      workers.addEventListener('controllerchange', () => location.reload(), { once: true });
      registration.waiting.postMessage('skip-waiting');
    };
    window.perchlightUpdate = { apply };
    window.dispatchEvent(new CustomEvent('perchlight-update-ready'));
  };

  const tellOfflineReady = () => {
    document.documentElement.dataset.offline = 'ready';
    window.dispatchEvent(new CustomEvent('perchlight-offline-ready'));
  };

  let followed = null;
  const follow = (registration) => {
    const worker = registration.installing;
    if (worker === null || worker === followed) {
      return;
    }
    followed = worker;
    const isFirst = registration.active === null;
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && !isFirst) {
        offerUpdate(registration);
      } else if (worker.state === 'activated' && isFirst) {
        tellOfflineReady();
      }
    });
  };

  const register = async () => {
    const registration = await workers.register('./sw.js', { updateViaCache: 'none' });
    if (registration.waiting !== null && registration.active !== null) {
      offerUpdate(registration);
    }
    if (registration.active !== null) {
      document.documentElement.dataset.offline = 'ready';
    }
    follow(registration);
    registration.addEventListener('updatefound', () => follow(registration));
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible' && Date.now() - checkedAt > DAY_MS) {
        checkedAt = Date.now();
        registration.update().catch(() => {});
      }
    });
  };

  // After the page: the worker's downloads must not hold up the first start.
  window.addEventListener('load', () => {
    register().catch((error) => console.warn('offline use is not possible here:', String(error)));
  });
})();
