// The way to the records when the app does not run.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from './fixtures.mjs';
import { clock, holdBack, shot, started, withoutWorker } from './harness.mjs';

const KEPT = {
  'perchlight/v1/entry/0a1b': 'a line with ünïcode, "quotes" and\na line end',
  'perchlight/v1/setting/theme': 'night',
};

const fill = (page, kept) =>
  page.evaluate((pairs) => {
    Object.entries(pairs).forEach(([key, value]) => localStorage.setItem(key, value));
    localStorage.setItem('another-app/secret', 'not ours');
  }, kept);

const fillDatabase = (page) =>
  page.evaluate(
    () =>
      new Promise((done, failed) => {
        const request = indexedDB.open('perchlight', 7);
        request.onupgradeneeded = () => {
          if (!request.result.objectStoreNames.contains('entries')) {
            request.result.createObjectStore('entries');
          }
        };
        request.onerror = () => failed(request.error);
        request.onsuccess = () => {
          const database = request.result;
          const put = database.transaction('entries', 'readwrite');
          put.objectStore('entries').put('the second copy of a line', 'entry/0a1b');
          put.oncomplete = () => {
            database.close();
            done();
          };
        };
      }),
  );

const rescued = async (page) => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#trouble-save').click()]);
  assert.match(download.suggestedFilename(), /^perchlight-rescue-\d{4}-\d\d-\d\d\.txt$/);
  return JSON.parse(readFileSync(await download.path(), 'utf8'));
};

test('without the app both copies of the records come out as one file, and nobody else\'s data', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench);
  bench.allow(/ERR_FAILED/, /thrown: .*fetch/, /Failed to fetch/);
  await context.route('**/*.wasm', (route) => route.abort());
  await page.goto(site.url);
  await fill(page, KEPT);
  await fillDatabase(page);
  await page.reload();
  await page.locator('#trouble').waitFor({ timeout: 5000 });
  assert.equal(await page.locator('#trouble-title').textContent(), 'Perchlight did not start.');
  const copy = await rescued(page);
  assert.deepEqual(copy.first_copy, KEPT);
  assert.deepEqual(copy.second_copy, { entries: [['entry/0a1b', 'the second copy of a line']] });
  assert.match(await page.locator('#trouble-text').inputValue(), /the second copy of a line/);
  await shot(page, 'rescue');
});

test('looking for a second copy that never was makes none', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench);
  bench.allow(/ERR_FAILED/, /thrown: .*fetch/, /Failed to fetch/);
  await context.route('**/*.wasm', (route) => route.abort());
  await page.goto(site.url);
  await fill(page, KEPT);
  await page.locator('#trouble').waitFor({ timeout: 5000 });
  await page.reload();
  await page.locator('#trouble').waitFor({ timeout: 5000 });
  const copy = await rescued(page);
  assert.deepEqual(copy.first_copy, KEPT);
  assert.match(copy.second_copy.unread, /AbortError/);
  assert.deepEqual(await page.evaluate(() => indexedDB.databases()), []);
});

test('a start that takes longer than ten seconds says so, and takes it back when it succeeds', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench);
  const release = await holdBack(context, '**/*.wasm');
  await clock(page, '2026-11-02T20:41:00Z');
  await page.goto(site.url, { waitUntil: 'domcontentloaded' });
  await page.clock.runFor(9_000);
  assert.equal(await page.locator('#trouble').isVisible(), false);
  await page.clock.runFor(2_000);
  await page.locator('#trouble').waitFor();
  release();
  await started(page);
  assert.equal(await page.locator('#trouble').isVisible(), false);
});

// A module whose only function is the instruction `unreachable`, byte by byte after the WebAssembly
// core specification, part 5: that is what a panic becomes in the optimised app.
const TRAP = [
  0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00, // magic number, version 1
  0x01, 0x04, 0x01, 0x60, 0x00, 0x00, // types: one function without parameters and results
  0x03, 0x02, 0x01, 0x00, // functions: one, of type 0
  0x07, 0x05, 0x01, 0x01, 0x66, 0x00, 0x00, // exports: function 0 as "f"
  0x0a, 0x05, 0x01, 0x03, 0x00, 0x00, 0x0b, // code: no locals, unreachable, end
];

test('an app that stops while in use says so and hands the records out', async ({ bench }) => {
  const { site, page } = await withoutWorker(bench);
  bench.allow(/unreachable/);
  await page.goto(site.url);
  await started(page);
  await fill(page, KEPT);
  await page.evaluate(async (bytes) => {
    const { instance } = await WebAssembly.instantiate(new Uint8Array(bytes));
    setTimeout(() => instance.exports.f());
  }, TRAP);
  await page.locator('#trouble').waitFor();
  assert.equal(await page.locator('#trouble-title').textContent(), 'Perchlight has stopped.');
  const copy = await rescued(page);
  for (const [key, value] of Object.entries(KEPT)) {
    assert.equal(copy.first_copy[key], value);
  }
  assert.equal('another-app/secret' in copy.first_copy, false);
});
