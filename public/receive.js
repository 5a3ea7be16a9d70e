// Hands over to the app what another app has sent: a text from its share sheet, or a file that was opened with Perchlight
// (share_target and file_handlers in manifest.webmanifest). It is shown there before anything changes.
(() => {
  const TAKE_IN = '#/take-in';

  // Gives a field of the screen that takes things in, as soon as it is there.
  const give = (selector, fill) => {
    const isGiven = () => {
      const field = document.querySelector(selector);
      if (field !== null) {
        fill(field);
      }
      return field !== null;
    };
    if (!isGiven()) {
      const watch = new MutationObserver(() => isGiven() && watch.disconnect());
      watch.observe(document.body, { childList: true, subtree: true });
    }
  };
  const tell = (field, kind) => field.dispatchEvent(new Event(kind, { bubbles: true }));

  // Put there by public/sw.js: what stands behind `#` reaches no host.
  const text = new URLSearchParams(location.hash.slice(1)).get('shared');
  if (text !== null) {
    // Out of the address at once, so that it does not stay in the history.
    history.replaceState(null, '', `./${TAKE_IN}`);
    give('#paste', (field) => {
      field.value = text;
      tell(field, 'input');
      field.form.requestSubmit();
    });
  }

  window.launchQueue?.setConsumer(async ({ files: [opened] = [] }) => {
    if (opened === undefined) {
      return;
    }
    const carried = new DataTransfer();
    carried.items.add(await opened.getFile());
    location.hash = TAKE_IN;
    give('#file', (field) => {
      field.files = carried.files;
      tell(field, 'change');
    });
  });
})();
