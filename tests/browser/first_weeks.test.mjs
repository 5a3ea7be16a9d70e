// First weeks: the card of today on the first screen, all of them by search, one of them open, offline too.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, clock, offlineReady, overflow, shot, started } from './harness.mjs';
import { EVENING, go, kept, openApp, openSigns, step, typeInChick, words } from './owner.mjs';

const withChick = async (bench, options = {}) => {
  const site = await bench.site();
  const { page } = await bench.phone(site, options);
  await clock(page, EVENING);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  return { site, page };
};

const titles = (page) => page.locator('main .sign-group').last().locator('.sign').allInnerTexts();
const search = (page, typed) => page.locator('#card-search').fill(typed);
const focusIsOn = (page, title) => page.locator('h1:focus', { hasText: title }).waitFor();

test('the first screen names the card of the day, and a tap opens it with its heading in focus', async ({ bench }) => {
  const { page } = await withChick(bench);
  await go(page, '#/now');
  const line = page.locator('a.quiet-link', { hasText: /^First weeks: / });
  await page.locator('.to-do summary').click();
  assert.equal(await words(line), 'First weeks: The first night');
  await line.click();
  await focusIsOn(page, 'The first night');
  assert.match(await words(page.locator('main .plain-list')), /weak light/);
  await page.locator('.page__back').click();
  await focusIsOn(page, 'First weeks');
  await page.locator('h2', { hasText: 'For today' }).waitFor();
});

test('a card is found by the beginnings of words in any case, and nothing found is said', async ({ bench }) => {
  const { page } = await withChick(bench);
  await go(page, '#/first-weeks');
  const all = (await titles(page)).length;
  assert.ok(all >= 26, `${all} cards`);
  await search(page, 'FUMES');
  assert.equal((await titles(page))[0], 'Fumes at home');
  await page.locator('.sign', { hasText: 'Fumes at home' }).last().click();
  await focusIsOn(page, 'Fumes at home');
  await page.locator('.page__back').click();
  assert.equal(await page.locator('#card-search').inputValue(), 'FUMES', 'what was searched for is kept');
  await search(page, 'zzz');
  await page.locator('main [role="status"]', { hasText: 'Nothing matches.' }).waitFor();
  assert.deepEqual(await titles(page), []);
  await search(page, '');
  assert.equal((await titles(page)).length, all);
});

test('in Spanish accents need not be typed', async ({ bench }) => {
  const { page } = await withChick(bench);
  await go(page, '#/settings');
  await page.getByRole('radio', { name: 'Español', exact: true }).check();
  await go(page, '#/first-weeks');
  await step(page, 'Primeras semanas');
  await search(page, 'humos');
  assert.equal((await titles(page))[0], 'Humos y vapores en casa');
  await search(page, 'vomito');
  assert.ok((await titles(page)).includes('Regurgitó: qué mirar'));
});

test('a card says where it comes from behind a tap, and its drawing is told in words', async ({ bench }) => {
  const { page } = await withChick(bench);
  await go(page, '#/first-weeks/keel');
  await focusIsOn(page, 'The breastbone by touch');
  assert.match(await page.getByRole('img').getAttribute('aria-label'), /Hollow.*Flat.*Round/);
  const source = page.locator('details.group p').first();
  assert.equal(await source.isVisible(), false);
  await page.locator('details.group > summary').click();
  assert.match(await words(source), /^Source: .*Standing: common practice\.$/);
});

test('a sign and the page of signs lead to the card that helps', async ({ bench }) => {
  const { page } = await withChick(bench);
  await openSigns(page);
  await page.locator('button.sign', { hasText: 'Brought food back just after a feed' }).click();
  await page.locator('main a.quiet-link').click();
  await focusIsOn(page, 'Food that comes back');
  await go(page, '#/wrong');
  for (const title of ['It will not eat', 'Food that comes back', 'Looking for a crop burn']) {
    await page.locator('a.sign', { hasText: title }).waitFor();
  }
});

test('the cards are there without the server, and before there is a chick', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await openApp(page, site);
  await offlineReady(page);
  await site.stop();
  await page.goto(`${site.url}#/first-weeks/fumes`);
  await page.reload();
  await started(page);
  await step(page, 'Fumes at home');
  await go(page, '#/first-weeks');
  assert.equal(await page.locator('h2', { hasText: 'For today' }).count(), 0);
});

for (const theme of ['dark', 'light']) {
  test(`axe finds nothing on the list and on any drawing, and nothing is wider than the phone, ${theme}`, async ({ bench }) => {
    test.setTimeout(120_000);
    const { page } = await withChick(bench, { theme });
    for (const name of ['first-weeks', ...['keel', 'perch', 'weighing', 'holding', 'crop-burn'].map((card) => `first-weeks/${card}`)]) {
      await go(page, `#/${name}`);
      await shot(page, `${name.replace('/', '-')}-${theme}`);
      assert.deepEqual(await axe(page), [], name);
      assert.equal(await overflow(page), 0, name);
    }
  });
}

test('with forced colours the drawings keep lines that can be seen', async ({ bench }) => {
  const { page } = await withChick(bench);
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  await go(page, '#/first-weeks/keel');
  const lines = await page.evaluate(() =>
    [...document.querySelectorAll('.figure path')].map((path) => ({
      stroke: getComputedStyle(path).stroke,
      ground: getComputedStyle(document.body).backgroundColor,
    })),
  );
  assert.equal(lines.length, 2);
  for (const { stroke, ground } of lines) {
    assert.notEqual(stroke, 'none');
    assert.notEqual(stroke, ground);
  }
  await shot(page, 'first-weeks-forced');
});
