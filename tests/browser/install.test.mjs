// The manifest, judged by the browser itself, and its icons.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { DIST, started } from './harness.mjs';

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

test('every icon is there in the size that the manifest says', () => {
  const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8'));
  const icons = [...manifest.icons, ...manifest.shortcuts.flatMap((shortcut) => shortcut.icons)];
  const drawn = icons.filter((icon) => icon.type === 'image/png');
  assert.ok(drawn.length >= 3);
  for (const { src, sizes } of drawn) {
    assert.equal(pngSize(join(DIST, src)), sizes, src);
  }
  assert.ok(manifest.icons.some((icon) => icon.purpose === 'maskable'));
  assert.equal(pngSize(join(DIST, 'icons/apple-touch-icon.png')), '180x180');
});

test('start address and shortcuts stay below the folder the app is served from', () => {
  const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8'));
  const home = 'https://host.example/some/folder/';
  const addresses = [manifest.start_url, manifest.scope, ...manifest.shortcuts.map((shortcut) => shortcut.url)];
  assert.deepEqual(
    addresses.map((address) => new URL(address, `${home}manifest.webmanifest`).href),
    [home, home, `${home}#/log`, `${home}#/weigh`],
  );
});
