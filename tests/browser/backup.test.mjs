// A backup counts once it was opened again, and the reminder of it keeps its days.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { clock, shot } from './harness.mjs';
import { go, kept, openApp, typeInChick, weigh } from './owner.mjs';

const open = async (bench) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, '2026-11-24T20:50:00Z');
  await openApp(page, site);
  await typeInChick(page);
  return { site, page };
};

const save = async (page) => {
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup file' }).click();
  const file = await downloading;
  return file.path();
};

const answer = async (page, file, words) => {
  await page.locator('#backup-check').setInputFiles(file);
  const said = page.locator('.backup__answer', { hasText: words });
  await said.waitFor();
  return (await said.innerText()).replaceAll('\u00a0', ' ');
};

const lastChecked = (page) => page.locator('#backup p', { hasText: 'Last checked backup' }).innerText();

const note = async (page, count) => {
  for (let grams = 1000; grams < 1000 + count; grams += 1) {
    await weigh(page, grams);
    const yes = page.getByRole('button', { name: 'Yes, that is what the scale says' });
    if (await yes.isVisible()) {
      await yes.click();
    }
    await kept(page);
  }
};

test('only a backup that was opened again and holds everything counts', async ({ bench }) => {
  const { page } = await open(bench);
  await weigh(page, 1030);
  await kept(page);
  await go(page, '#/handover');
  const file = await save(page);
  assert.match(await lastChecked(page), /never/);
  const sum = (await page.locator('#backup .hint', { hasText: 'Checksum' }).innerText()).replaceAll('\u00a0', ' ');
  const said = await answer(page, file, 'everything on this phone');
  // The chick and one weighing.
  assert.match(said, /holds 2 entries/);
  assert.ok(said.includes(sum) && said.includes('The same as when it was saved'), said);
  assert.match(await lastChecked(page), /24 Nov, 20:5/);
  await page.locator('#backup').scrollIntoViewIfNeeded();
  await shot(page, 'backup-checked');

  // One more entry: the old file no longer holds everything, and does not count.
  await page.clock.fastForward(24 * 3_600_000);
  await weigh(page, 1028);
  await kept(page);
  await go(page, '#/handover');
  assert.match(await answer(page, file, 'of this phone is missing'), /holds 2 entries, but 1 /);
  assert.match(await lastChecked(page), /24 Nov/);

  // A file that was cut, and a foreign one.
  const folder = bench.folder();
  const text = readFileSync(file, 'utf8');
  writeFileSync(join(folder, 'cut.json'), text.slice(0, text.length / 2));
  writeFileSync(join(folder, 'other.json'), '{"hello":1}');
  await answer(page, join(folder, 'cut.json'), 'its end is missing');
  await answer(page, join(folder, 'other.json'), 'there is no Perchlight card');
  assert.match(await lastChecked(page), /24 Nov/);
  assert.match(await answer(page, await save(page), 'everything on this phone'), /holds 3 entries/);
  assert.match(await lastChecked(page), /25 Nov/);
});

test('the reminder comes with the tenth entry, stays away for three days when put off, and goes with a checked backup', async ({ bench }) => {
  test.setTimeout(120_000);
  const { page } = await open(bench);
  const nudge = page.locator('.nudge');
  await note(page, 8);
  await go(page, '#/now');
  assert.equal(await nudge.count(), 0, 'nine entries');
  await note(page, 1);
  await go(page, '#/now');
  await nudge.waitFor({ state: 'attached' });
  await page.locator('.to-do summary').click();
  await nudge.scrollIntoViewIfNeeded();
  await shot(page, 'backup-nudge');
  await page.getByRole('button', { name: 'In 3 days' }).click();
  await nudge.waitFor({ state: 'detached' });
  await page.reload();
  await page.clock.fastForward(71 * 3_600_000);
  await go(page, '#/now');
  assert.equal(await nudge.count(), 0, 'three days are not over');
  await page.clock.fastForward(2 * 3_600_000);
  await go(page, '#/handover');
  await go(page, '#/now');
  await nudge.waitFor({ state: 'attached' });
  await go(page, '#/handover');
  const file = await save(page);
  await go(page, '#/now');
  await nudge.waitFor({ state: 'attached' });
  await go(page, '#/handover');
  await answer(page, file, 'everything on this phone');
  await go(page, '#/now');
  assert.equal(await nudge.count(), 0, 'checked');
});
