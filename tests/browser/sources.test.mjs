// Where the numbers come from: every rule on one page, reached from what it found, without a network.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { test } from './fixtures.mjs';
import { go, openApp, plain } from './owner.mjs';
import { NOW, losing } from './states.mjs';
import { clockAt, takeIn } from './script.mjs';

// The rules are the files of the ladder; the rest of that folder are not rules.
const FILES = readdirSync(new URL('../../src/domain/warnings/rules/', import.meta.url));
const RULES = FILES.filter((file) => !['mod.rs', 'stages.rs', 'trial.rs'].includes(file))
  .map((file) => file.replace('.rs', '').replaceAll('_', '-'))
  .sort();

test('a finding leads to its rule on the page of all rules, also offline', async ({ bench }) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await clockAt(page, NOW);
  await openApp(page, site);
  await takeIn(page, losing());
  await go(page, '#/sources');
  const shown = await page.locator('[data-rule]').evaluateAll((rows) => rows.map((row) => row.dataset.rule));
  assert.deepEqual(shown.toSorted(), RULES);
  // 10 % of the handover weight: Duerr & Gage 2020, p. 599, the limit of a plan that nobody changed.
  const row = plain(await page.locator('[data-rule="handover-loss"]').innerText());
  assert.match(row, /at the limit \(10 %[;)]/);
  assert.match(row, /Duerr & Gage 2020, p\. 599/);
  await context.setOffline(true);
  await go(page, '#/now');
  const finding = page.locator('details.finding').first();
  await finding.evaluate((details) => {
    details.open = true;
  });
  await finding.getByRole('link', { name: 'Where the numbers come from' }).click();
  await page.locator('main h1', { hasText: 'Where the numbers come from' }).waitFor();
  await page.waitForFunction(() => document.activeElement?.closest('[data-rule]'));
});
