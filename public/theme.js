// Sets the chosen theme before the first paint, so that the night stays dark while the app loads.
(() => {
  try {
    const theme = localStorage.getItem('perchlight/v1/setting/theme');
    if (theme === 'night' || theme === 'day') {
      document.documentElement.dataset.theme = theme;
    }
  } catch {
    // Storage is blocked: the device's own theme stays.
  }
})();
