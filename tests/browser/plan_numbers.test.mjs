// What the numbers of a plan are made from, and what stands beside them for a young and for a weaned chick.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { clock } from './harness.mjs';
import { CHICK, go, kept, openApp, plain, press, typeInChick, weigh, words } from './owner.mjs';
import { Script, takeIn } from './script.mjs';

const open = async (bench) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, '2026-11-24T20:50:00Z');
  await openApp(page, site);
  return page;
};

test('a recipe by volume becomes the share by weight that the plan keeps', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  await go(page, '#/plan');
  await page.locator('summary', { hasText: 'More of the plan' }).click();
  const answer = page.locator('#recipe-answer');
  await page.locator('#water-parts').fill('2');
  // 0.38 / 2.38 and 0.60 / 2.60.
  await answer.locator('p', { hasText: /16\.0\s%.*23\.1\s%/ }).waitFor();
  assert.equal(await answer.locator('button').count(), 0, 'a range is no share');
  await page.locator('#ten-spoons').fill('75');
  await page.locator('#spoon-ml').fill('15');
  // 75 g in 150 ml: 0.5 / 2.5.
  await answer.locator('p', { hasText: /20\.0\s% powder/ }).waitFor();
  await answer.locator('button').click();
  assert.equal(await page.locator('#powder').inputValue(), '20');
  await page.locator('#water-parts').fill('13');
  await answer.locator('.fault', { hasText: '0.5 to 12 parts' }).waitFor();
  await press(page, 'Save the changes');
  await kept(page);
  await go(page, '#/plan');
  assert.equal(await page.locator('#powder').inputValue(), '20');
  assert.equal(await page.locator('#water-parts').inputValue(), '');
});

test('water and serving are two numbers, each with its own limit, and 33 % is asked about', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  await go(page, '#/plan');
  await page.locator('summary', { hasText: 'More of the plan' }).click();
  const doubt = page.locator('#water-answer .fault');
  assert.equal(await page.locator('#mixing-water').inputValue(), '44.0');
  // The hottest water for 25 % powder is 46.4 °C.
  await page.locator('#mixing-water').fill('46.4');
  await doubt.waitFor({ state: 'detached' });
  await page.locator('#mixing-water').fill('46.5');
  await doubt.filter({ hasText: /Above 46\.4\s°C a mix of 25\.0\s% powder/ }).waitFor();
  const volume = page.locator('#powder-answer .fault');
  await page.locator('#powder').fill('33');
  await volume.filter({ hasText: 'Is that parts by volume?' }).waitFor();
  await page.locator('#powder').fill('25');
  await page.locator('#powder-answer .hint', { hasText: 'apple puree' }).waitFor();
  await volume.waitFor({ state: 'detached' });
  await page.locator('#mixing-water').fill('50.1');
  await press(page, 'Save the changes');
  await page.locator('.fault', { hasText: 'Type at most 50 °C' }).waitFor();
  await page.locator('#mixing-water').fill('45');
  await page.locator('#serve-to').fill('41.1');
  await press(page, 'Save the changes');
  await page.locator('.fault', { hasText: 'Serve within 37 to 41 °C' }).waitFor();
});

test('a wanted share of fat is told in grams, refused out of reach, beside what the species usually gets', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  await go(page, '#/plan');
  await page.locator('summary', { hasText: 'More of the plan' }).click();
  await page.locator('.hint', { hasText: 'Green-winged macaw: one of the macaws whose chicks get the most fat' }).waitFor();
  await page.locator('#species').selectOption({ label: 'Cockatiel' });
  assert.equal(await page.locator('.hint', { hasText: 'get the most fat' }).count(), 0);
  const answer = page.locator('#fat-answer');
  await page.locator('#wanted-fat').fill('15');
  await answer.locator('.fault', { hasText: 'First type fat and protein' }).waitFor();
  await page.locator('#label-fat').fill('12');
  await page.locator('#label-protein').fill('20');
  await answer.locator('p', { hasText: /about 1\.1\sg of peanut butter in 100 ml/ }).waitFor();
  assert.match(await words(answer), /Only if your breeder or avian vet asks for it/);
  await page.locator('#wanted-fat').fill('40');
  await answer.locator('.fault', { hasText: 'cannot be reached' }).waitFor();
});

test('a chick that should still grow stands beside its species\' curve, a fledged one does not', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  await weigh(page, 1031);
  await go(page, '#/weight');
  await page.locator('.verdict').waitFor();
  await page.locator('.fold > summary').last().click();
  await page.locator('.fold .plain-list').waitFor();
  assert.equal(await page.locator('main li', { hasText: 'Growth:' }).count(), 0);
  await go(page, '#/start');
  // Six weeks old on the day of the test.
  await typeInChick(page, { ...CHICK, name: 'Flint', hatched: '2026-10-13', weight: '757' });
  await weigh(page, 757);
  await go(page, '#/weight');
  await page.locator('.fold > summary').last().click();
  const growth = page.locator('main li', { hasText: 'Growth:' });
  await growth.waitFor();
  const text = plain(await growth.innerText());
  assert.match(text, /at 42 days is .* of its species/);
  assert.match(text, /Our own curve, not tested on birds: a published growth constant/);
});

test('a chick without formula is to be looked at further', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  const advice = page.locator('main p', { hasText: 'the crop full of solids at bedtime, and does it drink' });
  await go(page, '#/weaning');
  await page.locator('.weaning__answer').waitFor();
  assert.equal(await advice.count(), 0);
  const script = new Script(2);
  script.added('2026-11-01T09:00');
  for (const [at, slot] of [
    ['2026-11-10T09:00', 'midday'],
    ['2026-11-16T09:00', 'morning'],
    ['2026-11-22T09:00', 'bedtime'],
  ]) {
    script.note(at, 'feed-dropped', { slot, by_breeder: true });
  }
  await takeIn(page, script);
  await go(page, '#/weaning');
  await advice.waitFor();
});
