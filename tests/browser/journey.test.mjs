// A chick that is sent west by three hours: on the way, the arrival, the first feed, the days of the shift.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, overflow, shot, until } from './harness.mjs';
import { CHICK, fillPlan, go, hasFault, journalWords, kept, openApp, openWholePlan, plain, press, step, typeInChick, words } from './owner.mjs';
import { clockAt } from './script.mjs';

// IANA, file northamerica: in November New York is at UTC-5 and Los Angeles at UTC-8.
const WEST = { timezoneId: 'America/Los_Angeles' };

// Leaves New York on 24 November at 15:00 (20:00 UTC), expected at 21:00 (18:00 in Los Angeles).
const fillJourney = async (page, shift = '60 minutes a day at most') => {
  await page.locator('summary', { hasText: 'The journey' }).click();
  await page.locator('#left-day').fill('2026-11-24');
  await page.locator('#left-time').fill('15:00');
  await page.locator('#expected-day').fill('2026-11-24');
  await page.locator('#expected-time').fill('21:00');
  await page.locator('#breeder-offset').fill('-5');
  await page.getByRole('radio', { name: shift }).check();
};

const onItsWay = async (bench, shift, options = {}) => {
  const site = await bench.site();
  const { page } = await bench.phone(site, { ...WEST, ...options });
  await clockAt(page, '2026-11-24T22:30:00Z');
  await openApp(page, site);
  await openWholePlan(page);
  await fillPlan(page, CHICK);
  await fillJourney(page, shift);
  await press(page, 'Start with these');
  await page.locator('[data-way]').waitFor();
  await kept(page);
  return page;
};

const nextFeedAt = async (page, iso, text) => {
  await clockAt(page, iso);
  await go(page, '#/now');
  // Every feed so far was given.
  const given = page.getByRole('button', { name: /^Given, / });
  for (let left = await given.count(); left > 0; left -= 1) {
    await given.first().click();
    await until('the answer is taken', async () => (await given.count()) < left);
  }
  await page.locator('.next-feed', { hasText: text }).waitFor();
};

const isAbove = async (page, upper, lower) => {
  const [one, other] = await Promise.all([upper, lower].map((place) => page.locator(place).boundingBox()));
  return one.y < other.y;
};

test('west by three hours: on the way, arrival, a small thin first feed, then an hour a day to the new clock', async ({ bench }) => {
  test.setTimeout(120_000);
  const page = await onItsWay(bench);
  const way = await words(page.locator('[data-way]'));
  // 22:30 UTC is 14:30 here; left at 20:00 UTC, expected at 02:00 UTC.
  assert.match(way, /^On the way/);
  assert.match(way, /2 h 30 min without food/);
  assert.match(way, /Left Tue 24 Nov, 12:00\./);
  assert.match(way, /Expected Tue 24 Nov, 18:00, in 3 h 30 min\./);
  assert.match(way, /8 h at most \(common practice\).*After 10 h call the breeder \(common practice\).*After 12 h it is an emergency \(common practice\)/);
  assert.equal(await page.locator('.next-feed').count(), 0, 'no feed is due here while it is away');
  await shot(page, 'journey-way');
  assert.deepEqual(await axe(page), []);

  await clockAt(page, '2026-11-25T02:00:00Z');
  await press(page, 'It is home now');
  const first = page.locator('[data-first]');
  await first.waitFor();
  // Half to three quarters of 60 ml, at 20 % powder: common practice.
  assert.match(
    await words(first),
    /warm and quiet until 18:30, at least 30 min\.[\s\S]*droppings and the crop[\s\S]*offer 30 to 45 ml, not the usual 60 ml\.[\s\S]*thinner \(20 %\)/,
  );
  // Bedtime is 21:00 in New York on the day it leaves, 18:00 here; it waits until the chick is warm.
  assert.match(await words(page.locator('.next-feed')), /Bedtime feed at 18:30[\s\S]*45 ml/);
  // Settle-in 7 days, vet within 72 h, 45 days apart, from the 24th.
  await page.locator('.to-do summary').click();
  const dates = await words(page.locator('main'));
  assert.match(dates, /Settling in, 7 days more: drop no feed before Tue 1 Dec\./);
  assert.match(dates, /Go to an avian vet by Fri 27 Nov: 3 days left\./);
  assert.match(dates, /apart from other birds, 45 days more: until Fri 8 Jan/);
  assert.equal(await isAbove(page, '[data-first]', '.next-feed'), true, 'what to do until then first');
  await shot(page, 'journey-arrived');
  assert.deepEqual(await axe(page), []);

  assert.match(await words(page.locator('.next-feed')), /First warmth and quiet/);
  assert.equal(await page.getByRole('link', { name: 'Feed now' }).count(), 0);
  await go(page, '#/guide');
  assert.match(await words(page.locator('main')), /It has just arrived/);
  assert.equal(await page.locator('.guide__next').count(), 0, 'not before it is warm');

  await clockAt(page, '2026-11-25T02:31:00Z');
  await go(page, '#/now');
  await page.locator('.next-feed + [data-first]').waitFor();
  await page.getByRole('link', { name: 'Feed now' }).click();
  await press(page, 'flat');
  await step(page, 'Mix');
  // 45 ml + 5 ml = 50 ml; x 1.047 g/ml (20 % powder at 40 °C, Choi & Okos 1986) = 52.4 g; a fifth is
  // 10.5 g of powder, up to 11 g on the scale; four parts of water for one: 44 g.
  assert.match(await words(page.locator('.amounts')), /Water\s+44 g\s+Powder\s+11 g$/);
  assert.match(await words(page.locator('main')), /First feed at home: at most 45 ml, with 20 % powder/);
  await shot(page, 'journey-first-mix');
  await press(page, 'It is mixed');
  await page.locator('#cup').fill('40');
  await press(page, 'Measured');
  await press(page, 'Next');
  assert.equal(await words(page.locator('.guide__number')), '30 ml + 15 ml');
  await press(page, 'Next');
  await press(page, 'Position is good');
  await press(page, 'Yes, it bobs and swallows');
  await page.locator('.guide__next').click();
  await page.locator('.guide__next').click();
  await press(page, 'Enough');
  await press(page, 'Log this feed');
  await page.locator('.status-line', { hasText: 'Bedtime feed, 45' }).waitFor();
  assert.equal(await page.locator('[data-first]').count(), 0);

  // 07:00 in New York is 04:00 here; an hour later each day.
  await nextFeedAt(page, '2026-11-25T10:00:00Z', /05:00/);
  await nextFeedAt(page, '2026-11-26T10:00:00Z', /06:00/);
  await nextFeedAt(page, '2026-11-27T10:00:00Z', /07:00/);
  await nextFeedAt(page, '2026-11-28T10:00:00Z', /07:00/);
  const lines = (await journalWords(page)).map(plain);
  assert.ok(lines.some((line) => line.startsWith('Bedtime feed: 45 ml')), JSON.stringify(lines));
});

test('the hours without a feed ring above 8, at 10 and at 12 hours', async ({ bench }) => {
  const page = await onItsWay(bench);
  const level = async (iso, name) => {
    await clockAt(page, iso);
    await page.locator(`.lamp-band[data-level="${name}"]`).waitFor();
  };
  // Left at 20:00 UTC.
  await level('2026-11-25T04:00:00Z', 'settled');
  await level('2026-11-25T04:01:00Z', 'watch');
  await level('2026-11-25T06:00:00Z', 'call');
  await shot(page, 'journey-late');
  await level('2026-11-25T08:00:00Z', 'emergency');
});

test('at once the new clock counts from leaving', async ({ bench }) => {
  const page = await onItsWay(bench, 'all at once');
  await clockAt(page, '2026-11-25T02:00:00Z');
  await press(page, 'It is home now');
  // Bedtime is 21:00 here; it comes forward to eight hours after leaving at 12:00 here.
  await page.locator('.next-feed', { hasText: /at 20:00[\s\S]*45/ }).waitFor();
});

// A minute after the chick was typed in, at its plan.
const onThePlan = async (bench) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clockAt(page, '2026-11-24T20:50:00Z');
  await openApp(page, site);
  await typeInChick(page);
  // The clock stands still, and of two plans of one moment either may be the later.
  await clockAt(page, '2026-11-24T20:51:00Z');
  await go(page, '#/plan');
  return page;
};

test('a journey, a label or a spoon that cannot be is refused with a sentence', async ({ bench }) => {
  const page = await onThePlan(bench);
  const more = page.locator('summary', { hasText: 'More of the plan' });
  const refused = async (id, text, sentence) => {
    await page.locator(id).fill(text);
    await press(page, 'Save the changes');
    await hasFault(page, sentence);
    assert.ok(await page.locator(id).isVisible(), `${id} is shown`);
  };
  await fillJourney(page);
  await refused('#breeder-offset', '15', /No time zone is that far from UTC/);
  await page.locator('#breeder-offset').fill('0');
  await refused('#expected-time', '15:00', /arrive after it leaves/);
  await refused('#expected-day', '2026-12-24', /more than two days/);
  await refused('#expected-day', '', /Give day and time/);
  await page.locator('#expected-day').fill('2026-11-24');
  await page.locator('#expected-time').fill('23:00');
  await more.click();
  // Ten level spoons of 80 g each.
  await refused('#ten-spoons', '800', /Ten level spoons of powder weigh 10 to 250 g/);
  await shot(page, 'plan-spoon-refused');
  await page.locator('#ten-spoons').fill('74');
  await refused('#fat-supplement', '25', /0 to 5 g in 100 ml/);
  await page.locator('#fat-supplement').fill('');
  // 1 600 kJ typed as kcal.
  await page.locator('#label-fat').fill('12');
  await page.locator('#label-protein').fill('20');
  await refused('#label-energy', '1600', /energy is from 200 to 600 kcal in 100 g/);
  await page.locator('#label-energy').fill('360');
  await refused('#room-to', '20', /lowest room temperature must be below/);
  await page.locator('#room-to').fill('28');
  await press(page, 'Save the changes');
  await page.locator('main h1', { hasText: 'Chicks and settings' }).waitFor();
  await kept(page);

  await go(page, '#/plan');
  assert.equal(await page.locator('#left-time').inputValue(), '15:00');
  assert.equal(await page.locator('#breeder-offset').inputValue(), '', 'the same as here');
  assert.equal(await page.locator('#ten-spoons').inputValue(), '74');
  assert.equal(await page.locator('#label-energy').inputValue(), '360');
  assert.equal(await page.locator('#room-to').inputValue(), '28.0');

  // 160 ml x 1.062 g/ml x 0.25 x 3.6 kcal/g = 153; 78 x 1.04^0.75 x 1.5 x 1.5 = 181, and twice that.
  await go(page, '#/home');
  assert.match(
    await words(page.locator('main')),
    /The day's 160 ml hold about 153 kcal by the powder's label; textbooks give 181–361 for growth\. This checks/,
  );
  await shot(page, 'home-energy');
});

test('spoons weighed once are counted in the mix', async ({ bench }) => {
  const page = await onThePlan(bench);
  await page.locator('summary', { hasText: 'More of the plan' }).click();
  await page.locator('#ten-spoons').fill('74');
  await press(page, 'Save the changes');
  await go(page, '#/now');
  await page.getByRole('link', { name: 'Feed now' }).click();
  await press(page, 'flat');
  // 18 g of powder are 2.43 spoons of 7.4 g, five halves.
  await page.locator('.amounts', { hasText: /2 level spoons and a half/ }).waitFor();
});

test('the way home does not scroll sideways at 320 px with text at 200 %', async ({ bench }) => {
  test.setTimeout(120_000);
  const page = await onItsWay(bench, undefined, { viewport: { width: 320, height: 640 } });
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  });
  const look = async (name) => {
    await shot(page, `journey-${name}-320-200`);
    assert.equal(await overflow(page), 0, name);
  };
  await look('way');
  await clockAt(page, '2026-11-25T02:00:00Z');
  await press(page, 'It is home now');
  await page.locator('[data-first]').waitFor();
  await look('arrived');
  await go(page, '#/plan');
  await look('plan');
  await go(page, '#/home');
  await look('home');
});
