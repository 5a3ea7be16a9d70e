// The program comes in pieces: the first screen waits for no more than it needs, and nobody is left without a word.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { isLater } from '../../.build/split.mjs';
import { test } from './fixtures.mjs';
import { leftBehind } from './glance.mjs';
import { axe, DIST, holdBack, started, withoutWorker } from './harness.mjs';
import { go, kept, openApp, typeInChick, words } from './owner.mjs';

const LATER = '**/perchlight-*-rest.wasm';

const noteStart = (page) =>
  page.addInitScript(() => {
    new MutationObserver((_, watch) => {
      if (document.documentElement.dataset.started === 'true') {
        watch.disconnect();
        window.startedAt = performance.now();
      }
    }).observe(document, { attributes: true, subtree: true });
  });

// Name and time of every piece that the page asked for, and when its first screen was there.
const askedFor = (page) =>
  page.evaluate(() => ({
    startedAt: window.startedAt,
    pieces: performance
      .getEntriesByType('resource')
      .filter(({ name }) => name.endsWith('.wasm'))
      .map(({ name, startTime }) => ({ name: name.replace(/^.*\//, ''), startTime })),
  }));

test('a first visit asks for the first piece alone before its screen is there, and for all of them behind it', async ({ bench }) => {
  const { site, page } = await withoutWorker(bench);
  await noteStart(page);
  await openApp(page, site);
  const built = readdirSync(DIST).filter((name) => name.endsWith('.wasm'));
  assert.equal(built.filter((name) => !isLater(name)).length, 1);
  await page.waitForFunction((count) => performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('.wasm')).length >= count, built.length);
  const { startedAt, pieces } = await askedFor(page);
  assert.deepEqual(pieces.map(({ name }) => name).sort(), built.sort());
  for (const { name, startTime } of pieces) {
    assert.equal(startTime > startedAt, isLater(name), `${name} at ${startTime}, the screen at ${startedAt}`);
  }
});

test('where a chick is followed, what is due is shown while the other screens are still on their way', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  // The page before the app knows of it, and so fetches what is due beside the first piece.
  assert.deepEqual(await leftBehind(page, 'name'), [['Ember']]);
  assert.match((await leftBehind(page, 'as-of')).join(), /^As of \d{1,2} \w{3} \d{4}, \d\d:\d\d$/);
  const release = await holdBack(context, LATER);
  await page.goto(site.url);
  await started(page);
  await page.locator('.next-feed').waitFor();
  await page.locator('.dock a[href^="#/log"]').click();
  const waiting = page.locator('main [role="status"]');
  await waiting.waitFor();
  assert.equal(await words(waiting), 'One moment: loading this screen.');
  assert.equal(await page.locator('main h1').count(), 1);
  release();
  await page.getByRole('button', { name: 'Done', exact: true }).waitFor();
  await page.locator('main h1:focus', { hasText: 'Log a feed' }).waitFor();
  assert.equal(await waiting.count(), 0);
});

test('a piece that cannot be fetched is said where its screen would be, and tried again on a tap', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench);
  bench.allow(/ERR_FAILED/, /Failed to fetch/);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  await context.route(LATER, (route) => route.abort());
  await page.goto(site.url);
  await started(page);
  await go(page, '#/now');
  await page.locator('.bottom-bar a[href="#/weight"]').click();
  const failed = page.locator('main [role="alert"]');
  await failed.waitFor();
  assert.equal(await page.locator('main h1').count(), 1);
  assert.deepEqual(await axe(page), []);
  assert.match(await words(failed), /^This screen could not be loaded\. Your records are safe\./);
  await page.locator('.bottom-bar a[href="#/now"]').click();
  await page.locator('.next-feed').waitFor();
  await page.locator('.bottom-bar a[href="#/weight"]').click();
  await failed.waitFor();
  await context.unroute(LATER);
  await failed.getByRole('button', { name: 'Try again', exact: true }).click();
  await page.locator('main h1', { hasText: 'Weight' }).waitFor();
  assert.equal(await failed.count(), 0);
});
