// Starts the app. The build writes the hashed file names into this script's own tag.
const tag = document.querySelector('script[data-wasm]');

const fetchEarly = (href) => {
  const link = document.createElement('link');
  Object.assign(link, { rel: 'preload', as: 'fetch', crossOrigin: 'anonymous', href });
  document.head.append(link);
};

// Until the page as it is was painted; a page in the background is never painted.
const painted = () =>
  new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, document.hidden ? 0 : 500);
  });

try {
  // Where a chick is followed, what is due is fetched beside the first piece of the program, not after it.
  if (!document.getElementById('last-known').hidden) {
    [tag.dataset.wasm, ...tag.dataset.due.split(' ')].forEach(fetchEarly);
  }
  // What must be read before feeding, and what is known already, comes before the program.
  await painted();
  const app = await import(tag.dataset.module);
  await app.default({ module_or_path: tag.dataset.wasm });
} catch (error) {
  window.dispatchEvent(new CustomEvent('perchlight-start-failed'));
  throw error;
}
