// Nothing kept is lost: two tabs, damaged entries, backups. Faults that need more are in faults_*.test.mjs.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';
import { test } from './fixtures.mjs';
import { started, tell } from './harness.mjs';
import { go, journalWords, kept, logNextFeed, note, openApp, press, typeInChick, weigh } from './owner.mjs';

test('two tabs keep each other up to date and lose nothing', async ({ bench }) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  const other = await context.newPage();
  await openApp(other, site);
  await note(page, 'from the first tab');
  await note(other, 'from the second tab');
  await note(page, 'from the first again');
  for (const tab of [page, other]) {
    await tab.locator('.journal-line', { hasText: 'from the second tab' }).waitFor();
    await tab.locator('.journal-line', { hasText: 'from the first again' }).waitFor();
  }
  await page.reload();
  await started(page);
  assert.equal((await journalWords(page)).length, 4);
});

const entryKeys = (page) =>
  page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('perchlight/v1/entry/')).sort());

test('an entry damaged or lost in one copy heals from the other', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await openApp(page, site);
  await typeInChick(page);
  await logNextFeed(page);
  await weigh(page, 1030);
  await kept(page);
  const [first, second] = await entryKeys(page);
  await page.evaluate(
    ([first, second]) => {
      localStorage.setItem(first, localStorage.getItem(first).slice(0, -5));
      localStorage.removeItem(second);
    },
    [first, second],
  );
  await page.reload();
  await started(page);
  await go(page, '#/journal');
  await page.locator('.journal-line').nth(2).waitFor();
  const lines = await page.locator('.journal-line').count();
  assert.equal(lines, 3);
  const said = await page.locator('.banner[data-kind="storage"] p').first().innerText();
  assert.match(said, /could not be read.*put aside, not deleted/);
  tell({ fault: 'an entry cut and another gone in one copy', trials: 2, lost: Array(3 - lines).fill('entry'), said });
});

test('an entry damaged in its only copy is set aside and offered, and the rest is there', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { get: () => undefined }));
  await openApp(page, site);
  await typeInChick(page);
  await logNextFeed(page);
  await weigh(page, 1030);
  const damaged = await page.evaluate(() => {
    const entries = Object.keys(localStorage).filter((key) => key.startsWith('perchlight/v1/entry/'));
    const key = entries.find((key) => localStorage.getItem(key).includes('10300'));
    const text = localStorage.getItem(key).replace('10300', '20300');
    localStorage.setItem(key, text);
    return { key, text };
  });
  await page.reload();
  await started(page);
  const banner = page.locator('.banner', { hasText: 'could not be read' });
  await banner.waitFor();
  const downloading = page.waitForEvent('download');
  await banner.getByRole('button', { name: 'Download them' }).click();
  const stream = await (await downloading).createReadStream();
  const text = (await stream.toArray()).join('');
  assert.ok(text.includes(damaged.text), 'the damaged text is in the file');
  assert.equal((await journalWords(page)).length, 2);
  assert.equal(await page.evaluate((key) => localStorage.getItem(key), damaged.key), damaged.text, 'it stays where it was');
  const said = await banner.locator('p').first().innerText();
  tell({ fault: 'an entry changed in its only copy: the others', trials: 1, lost: [], said });
  // Another phone takes in what is whole of everything that this browser holds.
  await go(page, '#/settings');
  const saving = page.waitForEvent('download');
  await press(page, 'Save everything as plain text');
  const saved = await (await saving).createReadStream();
  const everything = (await saved.toArray()).join('');
  const { page: other } = await bench.phone(site);
  await openApp(other, site);
  await go(other, '#/take-in');
  await other.locator('#paste').fill(everything);
  await press(other, 'Next');
  await other.locator('.question', { hasText: 'It holds 2 entries; new here: 2.' }).waitFor();
  await press(other, 'Import');
  await other.locator('.lamp-band').waitFor();
  assert.equal((await journalWords(other)).length, 2);
});

test('a start writes nothing into the first copy', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  await page.addInitScript(() => {
    window.writes = [];
    const write = Storage.prototype.setItem;
    Storage.prototype.setItem = function (key, value) {
      window.writes.push(key);
      return write.call(this, key, value);
    };
  });
  await page.reload();
  await started(page);
  await sleep(1_500);
  assert.deepEqual(await page.evaluate(() => window.writes), []);
});

test('a backup saved and opened on another phone brings everything, and twice brings nothing more', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await openApp(page, site);
  await typeInChick(page);
  await logNextFeed(page);
  await kept(page);
  await go(page, '#/handover');
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup file' }).click();
  const path = await (await downloading).path();

  const { page: second } = await bench.phone(site);
  await openApp(second, site, '#/take-in');
  await second.locator('#file').setInputFiles(path);
  await second.locator('.question', { hasText: '2 entries; new here: 2' }).waitFor();
  await second.getByRole('button', { name: 'Import' }).click();
  await second.locator('.top-bar', { hasText: 'Ember' }).waitFor();
  await go(second, '#/take-in');
  await second.locator('#file').setInputFiles(path);
  await second.locator('.question', { hasText: '2 entries; new here: 0' }).waitFor();
});
