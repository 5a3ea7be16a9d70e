// The manifest, judged by the browser itself, and its icons.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { DIST, offlineReady, started } from './harness.mjs';
import { go, openApp } from './owner.mjs';
import { Script } from './script.mjs';

// Width and height stand in the first chunk of a PNG (W3C PNG specification, 11.2.1 IHDR).
const pngSize = (path) => {
  const bytes = readFileSync(path);
  assert.equal(bytes.toString('latin1', 1, 4), 'PNG');
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
};

test('the browser finds nothing that keeps the app from being installed', async ({ bench }) => {
  const site = await bench.site({ base: '/somewhere/deep/' });
  const { context, page } = await bench.phone(site);
  await page.goto(site.url);
  await started(page);
  const session = await context.newCDPSession(page);
  const { errors, url } = await session.send('Page.getAppManifest');
  assert.deepEqual(errors, []);
  assert.equal(url, `${site.url}manifest.webmanifest`);
  assert.deepEqual((await session.send('Page.getInstallabilityErrors')).installabilityErrors, []);
  // The id is resolved against the origin, so that it stays the same wherever the files move (W3C Web App Manifest, id member).
  assert.equal((await session.send('Page.getAppId')).appId, `${site.origin}/perchlight`);
});

test('every icon and picture is there in the size that the manifest says', () => {
  const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8'));
  const icons = [...manifest.icons, ...manifest.screenshots, ...manifest.shortcuts.flatMap((shortcut) => shortcut.icons)];
  const drawn = icons.filter((icon) => icon.type === 'image/png');
  assert.ok(drawn.length >= 3);
  for (const { src, sizes } of drawn) {
    assert.equal(pngSize(join(DIST, src)), sizes, src);
  }
  assert.ok(manifest.icons.some((icon) => icon.purpose === 'maskable'));
  assert.equal(pngSize(join(DIST, 'icons/apple-touch-icon.png')), '180x180');
});

test('start address, shortcuts and what other apps send stay below the folder the app is served from', () => {
  const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8'));
  const home = 'https://host.example/some/folder/';
  const { share_target: shared, file_handlers: handlers } = manifest;
  const addresses = [shared.action, ...handlers.map(({ action }) => action), manifest.start_url, manifest.scope, ...manifest.shortcuts.map((shortcut) => shortcut.url)];
  assert.deepEqual(
    addresses.map((address) => new URL(address, `${home}manifest.webmanifest`).href),
    [home, home, home, home, `${home}#/log`, `${home}#/weigh`],
  );
});

const backup = () => new Script().added('2026-11-01T12:00').backup();

const shareTarget = (site) => {
  const { action, method, enctype } = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8')).share_target;
  return { action: new URL(action, site.url).href, method, enctype };
};

// As a browser sends it from share_target (W3C Web Share Target, "launch the web share target"): a form that another page posts.
const share = async (page, site, parts) => {
  await page.goto('about:blank');
  await page.evaluate(
    ({ action, method, enctype, parts }) => {
      const form = Object.assign(document.createElement('form'), { action, method, enctype });
      for (const [name, value] of Object.entries(parts)) {
        form.append(Object.assign(document.createElement('textarea'), { name, value }));
      }
      document.body.append(form);
      form.submit();
    },
    { ...shareTarget(site), parts },
  );
};

test('a text shared to the app lands in the import, without the server and in no address', async ({ bench }) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await openApp(page, site);
  await offlineReady(page);
  await site.stop();
  const asked = [];
  context.on('request', (request) => asked.push(request.url()));
  await share(page, site, { title: 'From the breeder', text: `Here it is:\n${backup()}` });
  await page.locator('.fault', { hasText: 'there is no Perchlight card' }).waitFor();
  assert.equal(page.url(), `${site.url}#/take-in`);
  await share(page, site, { text: backup() });
  await page.locator('.question', { hasText: 'new here: 1' }).waitFor();
  assert.equal(page.url(), `${site.url}#/take-in`);
  assert.ok(asked.includes(site.url));
  // What stands behind `#` is sent to no host (RFC 9110, 7.1).
  const sent = asked.map((url) => url.split('#')[0]);
  assert.deepEqual(sent.filter((url) => /\?|breeder|chick-added/.test(url)), []);
});

test('a file opened with the app lands in the import', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  // Only an installed app is given files; this is its door (WICG File Handling, LaunchQueue).
  await page.addInitScript(() => {
    Object.defineProperty(window, 'launchQueue', {
      value: {
        setConsumer: (take) => {
          window.launchWith = take;
        },
      },
    });
  });
  await openApp(page, site);
  await go(page, '#/settings');
  await page.evaluate((text) => {
    const getFile = async () => new File([text], 'backup.json', { type: 'application/json' });
    return window.launchWith({ files: [{ getFile }] });
  }, backup());
  await page.locator('.question', { hasText: 'new here: 1' }).waitFor();
});
