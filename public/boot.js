// Starts the app. The build writes the two hashed file names into this script's own tag.
const tag = document.querySelector('script[data-wasm]');
try {
  const app = await import(tag.dataset.module);
  await app.default({ module_or_path: tag.dataset.wasm });
} catch (error) {
  window.dispatchEvent(new CustomEvent('perchlight-start-failed'));
  throw error;
}
