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

test('a text shared to the app lands in the import, without the server and out of the address', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await openApp(page, site);
  await offlineReady(page);
  await site.stop();
  // As a browser builds it from share_target (W3C Web Share Target, "launch the web share target").
  const sent = new URLSearchParams({ title: 'From the breeder', text: `Here it is:\n${backup()}` });
  await page.goto(`${site.url}?${sent}`);
  await started(page);
  await page.locator('.fault', { hasText: 'there is no Perchlight card' }).waitFor();
  assert.equal(page.url(), `${site.url}#/take-in`);
  await page.goto(`${site.url}?${new URLSearchParams({ text: backup() })}`);
  await page.locator('.question', { hasText: 'new here: 1' }).waitFor();
  assert.equal(page.url(), `${site.url}#/take-in`);
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
