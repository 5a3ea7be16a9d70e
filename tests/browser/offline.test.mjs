// Without a network: the server is really gone, not only said to be.
import assert from 'node:assert/strict';
import { readdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { cacheNames, DIST, offlineReady, started, until } from './harness.mjs';

const open = async (bench, options) => {
  const site = await bench.site(options);
  const { context, page } = await bench.phone(site);
  await page.goto(site.url);
  await started(page);
  await offlineReady(page);
  return { site, context, page };
};

test('after one visit the app starts without its server, on any screen, also in a new tab', async ({ bench }) => {
  const { site, context, page } = await open(bench);
  await site.stop();
  await page.reload();
  await started(page);
  const other = await context.newPage();
  await other.goto(`${site.url}?never-asked-before#/weigh`);
  await started(other);
  const third = await context.newPage();
  await third.goto(`${site.url}index.html`);
  await started(third);
});

test('a first visit that could not fetch every file is not called ready, and the next one is', async ({ bench }) => {
  const folder = bench.copyOfBuild();
  const icon = join(folder, 'icons/icon-512.png');
  const away = join(bench.folder(), 'icon-512.png');
  renameSync(icon, away);
  const site = await bench.site({ folder });
  const { page } = await bench.phone(site);
  bench.allow(/404/);
  await page.addInitScript(() => {
    window.states = [];
    const register = navigator.serviceWorker.register;
    ServiceWorkerContainer.prototype.register = async function (...words) {
      const registration = await register.apply(this, words);
      const worker = registration.installing;
      worker?.addEventListener('statechange', () => window.states.push(worker.state));
      return registration;
    };
  });
  await page.goto(site.url);
  await started(page);
  await until('the installation has ended', () => page.evaluate(() => window.states.includes('redundant')));
  assert.equal(await page.locator('html[data-offline="ready"]').count(), 0);
  assert.deepEqual(await cacheNames(page), [], 'no half of the files is left behind');
  renameSync(away, icon);
  await page.reload();
  await started(page);
  await offlineReady(page);
  await site.stop();
  await page.reload();
  await started(page);
});

test('the cache holds every file of the build that the app asks for, and nothing else', async ({ bench }) => {
  const { site, page } = await open(bench);
  bench.allow(/404/);
  await page.evaluate(() => fetch('./not-there.txt'));
  const kept = await page.evaluate(async () => {
    const found = {};
    for (const name of await caches.keys()) {
      const requests = await (await caches.open(name)).keys();
      found[name] = requests.map((request) => request.url);
    }
    return found;
  });
  const names = readdirSync(DIST, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'sw.js' && !/\.(br|gz)$/.test(entry.name))
    .map((entry) => `${entry.parentPath}/${entry.name}`.replaceAll('//', '/').slice(DIST.length))
    // Shown by the system before installing.
    .filter((name) => !name.startsWith('screenshots/'))
    .map((name) => site.url + (name === 'index.html' ? '' : name));
  assert.ok(names.length > 10);
  assert.equal(Object.keys(kept).length, 1);
  assert.deepEqual(Object.values(kept)[0].sort(), names.sort());
});

test('what is not part of the app is asked for on the network, and fails without one', async ({ bench }) => {
  const { site, page } = await open(bench);
  bench.allow(/ERR_CONNECTION_REFUSED/);
  await site.stop();
  const reached = await page.evaluate(() => fetch('./not-there.txt').then(() => true, () => false));
  assert.equal(reached, false);
});

test('below a sub-path everything stays below it, with and without the server', async ({ bench }) => {
  const base = '/some/folder/';
  const site = await bench.site({ base });
  const { context, page } = await bench.phone(site);
  const outside = [];
  context.on('request', (request) => {
    const { pathname } = new URL(request.url());
    if (!pathname.startsWith(base)) {
      outside.push(pathname);
    }
  });
  await page.goto(site.url);
  await started(page);
  await offlineReady(page);
  assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.ready).scope), site.url);
  await site.stop();
  await page.reload();
  await started(page);
  assert.deepEqual(outside, []);
  const names = await cacheNames(page);
  assert.deepEqual(names.map((name) => name.startsWith(`perchlight-${base}@`)), [true]);
});

test('what is kept for offline use outlives a killed browser', async ({ bench }) => {
  const site = await bench.site();
  const browser = bench.killable(site);
  let page = await browser.open();
  await page.goto(site.url);
  await started(page);
  await offlineReady(page);
  await page.waitForTimeout(1000);
  await browser.kill();
  await site.stop();
  page = await browser.open();
  await page.goto(site.url);
  await started(page);
});
