// Sets the chosen theme before the first paint, so that the night stays dark while the app loads.
(() => {
  // The ground of style/tokens.css; the browser's own bars take it from here.
  const GROUNDS = { night: ['dark', '#0e1b22'], day: ['light', '#f7f2e7'] };
  let theme = null;
  try {
    theme = localStorage.getItem('perchlight/v1/setting/theme');
  } catch {
    // Storage is blocked: the device's own theme stays.
  }
  if (theme === null || !Object.hasOwn(GROUNDS, theme)) {
    return;
  }
  const [scheme, ground] = GROUNDS[theme];
  document.documentElement.dataset.theme = theme;
  document.querySelector('meta[name="color-scheme"]').content = scheme;
  document.querySelectorAll('meta[name="theme-color"]').forEach((meta) => {
    meta.content = ground;
  });
})();
