// A frightened first-time owner's phone, for the walks through troubles: eight quiet days, then a sign noted or a
// feed refused, and what stands on the first screen.
import assert from 'node:assert/strict';
import { axe, shot } from './harness.mjs';
import { go, openApp, openSigns, plain, press } from './owner.mjs';
import { Script, clockAt, takeIn } from './script.mjs';

export const [BREEDER, VET, NIGHT_VET] = ['tel:+15550100', 'tel:+15550101', 'tel:+15550102'];
const PHONE = { width: 360, height: 800 };

export const day = (number) => `2026-11-${String(number).padStart(2, '0')}`;
export const at = (page, number, time) => clockAt(page, `${day(number)}T${time}:00Z`);

export const ASPIRATION = /^Food may have gone into the windpipe/;

// Eight quiet days at home, from day 2 to day 9: about 1040 g, everything eaten, droppings as usual.
export const quietDays = () => {
  const script = new Script(7);
  script.added(`${day(1)}T12:00`).note(`${day(1)}T12:05`, 'arrived').fed(`${day(1)}T14:05`, 'midday', 40).fed(`${day(1)}T21:05`, 'bedtime', 60);
  [1040, 1042, 1041, 1040, 1043, 1041, 1042, 1041].forEach((grams, index) => {
    const date = day(index + 2);
    script.weighed(`${date}T06:45`, grams).note(`${date}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
    script.fed(`${date}T07:05`, 'morning', 60).fed(`${date}T14:05`, 'midday', 40).fed(`${date}T21:05`, 'bedtime', 60);
    script.solids(`${date}T16:00`, 'little').droppings(`${date}T17:00`);
  });
  return script;
};

// A phone that holds what the script tells, on that day at that time.
export const owner = async (bench, script, number, time) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await at(page, number, time);
  await openApp(page, site);
  await takeIn(page, script);
  return page;
};

// The whole first screen in one picture.
export const picture = async (page, name) => {
  await page.setViewportSize({ width: PHONE.width, height: 1_700 });
  await shot(page, `frightened-${name}`);
  await page.setViewportSize(PHONE);
};

export const noteSign = async (page, seen, name) => {
  await openSigns(page);
  await page.locator('button.sign', { hasText: seen }).click();
  const answer = page.locator('.answer');
  const said = plain(await answer.innerText());
  await shot(page, `frightened-${name}`);
  const calls = await page.locator('.dock a.call').evaluateAll((links) => links.map((link) => link.getAttribute('href')));
  await press(page, 'Note it in the journal');
  await page.locator('.status-line', { hasText: seen }).waitFor();
  return { said, level: await answer.getAttribute('data-level'), calls };
};

// What stands on Now, after it was looked at for contradictions: whom to call stands there with a number from
// the breeder's level up; and where food is kept back nothing offers, counts down or asks to note any.
export const now = async (page, name) => {
  await go(page, '#/now');
  await page.locator('.lamp-band').waitFor();
  await picture(page, name);
  const main = page.locator('main');
  const band = main.locator('.lamp-band');
  const card = main.locator('.next-feed');
  const level = await band.getAttribute('data-level');
  const calls = await main.locator('a.call').evaluateAll((links) =>
    links.map((link) => ({ to: link.getAttribute('href'), shown: link.querySelector('.call__digits').innerText })),
  );
  const words = plain(await main.innerText());
  const what = `${name}: ${words}`;
  if (['call', 'vet', 'emergency'].includes(level)) {
    assert.ok(calls.length > 0, `somebody to call: ${what}`);
  }
  for (const { to, shown } of calls) {
    assert.equal(`tel:${shown.replace(/[^+\d]/g, '')}`, to, what);
  }
  const state = await card.getAttribute('data-state');
  const held = state === 'held';
  const title = held ? plain(await page.locator('.next-feed__held').first().innerText()) : '';
  if (held) {
    assert.equal(await main.locator('.next-feed__countdown').count(), 0, `no countdown: ${what}`);
    // A feed under way may be gone back to, to see why it stopped.
    const ways = main.locator('a[href^="#/guide"]').filter({ hasNotText: 'See why' });
    assert.equal(await ways.count(), 0, `no way to feed: ${what}`);
    assert.equal(await main.locator('a.button--main[href^="#/log"]').count(), 0, `"Log it" is not filled: ${what}`);
    assert.doesNotMatch(words, /Feed now|give it now|Feed later|Settled/, what);
  }
  assert.deepEqual(await axe(page), [], name);
  return { level, words, title, held, calls: calls.map(({ to }) => to) };
};

// The guide starts no feed, and the log asks before it takes one.
export const feedsNowhere = async (page) => {
  await go(page, '#/guide');
  await page.locator('.question .guard').first().waitFor();
  assert.equal(await page.getByRole('button', { name: 'flat', exact: true }).count(), 0);
  await go(page, '#/log');
  await page.locator('[data-held]').waitFor();
  await go(page, '#/weaning');
  assert.equal(await page.locator('main .button--main').count(), 0, 'no feed is dropped meanwhile');
};

export const crop = async (page, state) => {
  await go(page, '#/crop');
  await page.getByRole('radio', { name: state, exact: true }).check();
  await press(page, 'Keep');
  await page.locator('.lamp-band').waitFor();
};
