// The page before the program: what was known when the app was left, and taps that wait for the program.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { GLANCE, leaveGlance, leftBehind } from './glance.mjs';
import { axe, clock, holdBack, shot, started, until, withoutWorker } from './harness.mjs';
import { EVENING, kept, logNextFeed, openApp, plain, typeInChick } from './owner.mjs';

const PROGRAM = '**/*.wasm';
const part = (page, name) => page.locator(`#last-known-${name}`);
const minutesShown = async (page) => {
  const text = plain(await part(page, 'countdown').innerText());
  const [, hours, minutes] = text.match(/^(?:(\d+) h ?)?(?:(\d+) min)?$/) ?? assert.fail(text);
  return Number(hours ?? 0) * 60 + Number(minutes ?? 0);
};

// When the first feed of the next day is due, 07:00 in London's winter.
const MORNING_S = Date.parse('2026-11-25T07:00:00Z') / 1000;

// A phone on which the bedtime feed was logged at 20:50, opened anew without the program; `holdsS` is the moment until
// which the answer is sure.
const opened = async (bench, options = {}) => {
  const { site, context, page } = await withoutWorker(bench, options);
  await clock(page, EVENING);
  await openApp(page, site);
  await typeInChick(page);
  await logNextFeed(page);
  await kept(page);
  const left = async (name) => Number((await leftBehind(page, name)).join() || 'NaN');
  await until('it is worked out how long the answer holds', async () => (await left('until')) - (await left('at')) > 60);
  const holdsS = await left('until');
  const release = await holdBack(context, PROGRAM);
  return { site, page, release, holdsS };
};

const openedAnew = async (page, site, hash = '') => {
  await page.goto('about:blank');
  await page.goto(`${site.url}${hash}`, { waitUntil: 'domcontentloaded' });
  await page.locator('#last-known').waitFor();
};

test('before the program the countdown runs, and a tap on Weigh is carried out when it comes', async ({ bench }) => {
  const { site, page, release } = await opened(bench);
  await openedAnew(page, site);
  assert.match(await part(page, 'as-of').innerText(), /^As of 24 Nov 2026, 20:5\d$/);
  assert.equal(await part(page, 'name').innerText(), 'Ember');
  assert.match(plain(await part(page, 'answer').innerText()), /^Morning feed at 07:00/);
  // From ten to nine to seven it is ten hours and ten minutes.
  const before = await minutesShown(page);
  assert.ok(before > 600 && before <= 610, `${before} minutes`);
  await page.clock.fastForward('03:00');
  await until('three minutes are gone', async () => [before - 3, before - 4].includes(await minutesShown(page)));
  assert.equal(await page.locator('#last-known .call').first().getAttribute('href'), 'tel:+15550100');
  await shot(page, 'before-app');
  await page.locator('#last-known').getByRole('link', { name: 'Weigh', exact: true }).click();
  await page.getByText('It opens in a moment.').locator('visible=true').waitFor();
  release();
  await started(page);
  await page.locator('#weight').waitFor();
  await page.locator('main h1:focus').waitFor();
  assert.equal(await page.locator('#last-known').count(), 0);
});

test('past the moment until which the answer is sure, nothing of it is shown', async ({ bench }) => {
  const { site, page, release, holdsS } = await opened(bench);
  assert.ok(holdsS <= MORNING_S, `${holdsS}`);
  await openedAnew(page, site);
  assert.equal(await part(page, 'answer').isVisible(), true);
  // It stands there while the moment passes.
  const toGoMs = holdsS * 1000 - (await page.evaluate(() => Date.now()));
  await page.clock.fastForward(toGoMs + 2_000);
  await part(page, 'over').waitFor();
  const nothing = async () => {
    for (const name of ['answer', 'countdown', 'level']) {
      assert.equal(await part(page, name).isVisible(), false, name);
    }
    const said = await page.locator('#last-known').evaluate((shown) => {
      const parts = [...shown.children].filter((part) => !part.matches('.acts') && part.getClientRects().length > 0);
      return parts.map((part) => part.innerText).join(' ');
    });
    assert.doesNotMatch(said, /feed|\bml\b/i);
  };
  await nothing();
  assert.equal(await page.locator('#last-known .call').count(), 1, 'the call stays');
  // And opened long after it.
  await page.clock.fastForward('02:00:00');
  await openedAnew(page, site);
  await nothing();
  release();
  await started(page);
});

test('an answer from a clock that was set back is not shown', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench);
  await openApp(page, site);
  const later = () => GLANCE().map(([name, ...texts]) => (name === 'at' ? [name, texts[0] + 600] : [name, ...texts]));
  await leaveGlance(page, later);
  await holdBack(context, PROGRAM);
  await openedAnew(page, site);
  assert.equal(await part(page, 'answer').isVisible(), false);
  await leaveGlance(page, GLANCE);
  await openedAnew(page, site);
  assert.equal(await part(page, 'answer').isVisible(), true);
});

test('Help before the program shows what to do first, and is open when it comes', async ({ bench }) => {
  const { site, page, release } = await opened(bench);
  await openedAnew(page, site);
  assert.equal(await part(page, 'aid').isVisible(), false);
  await page.locator('#last-known').getByRole('link', { name: 'Help', exact: true }).click();
  await part(page, 'aid').waitFor();
  assert.match(plain(await part(page, 'aid').innerText()), /Do not feed it until it is warm/);
  assert.deepEqual(await axe(page), []);
  await shot(page, 'before-app-help');
  release();
  await started(page);
  await page.locator('.page--help').waitFor();
});

test('what is stored is shown as text only, calls telephones only, and a damaged text shows nothing', async ({ bench }) => {
  const { site, context, page } = await withoutWorker(bench, { locale: 'es-ES' });
  await openApp(page, site);
  await holdBack(context, PROGRAM);
  const hostile = () => [
    ...GLANCE().filter(([name]) => name !== 'name'),
    ['name', '<img src=x onerror=alert(1)>'],
    ['call', 'Other', 'x', 'javascript:alert(1)'],
    ['call', 'Other', 'x', 'tel:1<b>'],
    ['later', 'unknown'],
  ];
  await leaveGlance(page, hostile);
  await openedAnew(page, site);
  assert.equal(await part(page, 'name').innerText(), '<img src=x onerror=alert(1)>');
  const links = await page.locator('#last-known .call').evaluateAll((calls) => calls.map((call) => call.getAttribute('href')));
  assert.deepEqual(links, ['tel:5550102', 'tel:+15550100']);
  await page.locator('#last-known').getByRole('link', { name: 'Pesar', exact: true }).waitFor();
  await page.locator('#last-known').getByRole('link', { name: 'Ayuda', exact: true }).waitFor();
  for (const damaged of [() => [['As of 2 Nov 2026, 20:41'], ['Next: bedtime feed, 60 ml']], () => [['glance', '2'], ['answer', 'Feed']], () => GLANCE().slice(0, 3)]) {
    await leaveGlance(page, damaged);
    await page.goto('about:blank');
    await page.goto(site.url, { waitUntil: 'domcontentloaded' });
    await page.locator('.first__about').waitFor();
    assert.equal(await page.locator('#last-known').isVisible(), false);
  }
});
