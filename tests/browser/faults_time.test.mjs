// The phone's clock and zone move under the journal: nothing is lost or moved, and what is due stays right.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { clock, started, tell } from './harness.mjs';
import { CHICK, go, journalWords, kept, logNextFeed, missing, note, openApp, storageNotice, typeInChick, weigh } from './owner.mjs';

const plain = (text) => text.replace(/[\u00a0\s]+/g, ' ').trim();
const words = async (page) => (await journalWords(page)).map(plain);
const times = async (page) => (await page.locator('.journal-line__time').allInnerTexts()).map(plain);
const nextFeed = async (page) => {
  await go(page, '#/now');
  await page.locator('.next-feed').waitFor();
  return plain(await page.locator('.next-feed').innerText());
};

const withChickAt = async (bench, at, day, options = {}) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site, options);
  await clock(page, at);
  await openApp(page, site);
  await typeInChick(page, { ...CHICK, weighed: day });
  await kept(page);
  return { site, context, page };
};

const moveClock = async (page, at) => {
  await page.clock.setSystemTime(new Date(at));
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
};

const reload = async (page) => {
  await page.reload();
  await started(page);
};

test('with the clock set back a day everything stays, new entries are taken, and the screen asks to check the clock', async ({ bench }) => {
  const { page } = await withChickAt(bench, '2026-11-24T20:50:00Z', '2026-11-24');
  await weigh(page, 1012);
  await kept(page);
  assert.equal(await page.locator('.banner').count(), 0);
  await moveClock(page, '2026-11-23T20:55:00Z');
  await storageNotice(page, /some entries are later than its clock/);
  await note(page, 'noted a day before');
  await reload(page);
  const said = await storageNotice(page, /some entries are later than its clock/);
  const all = ['Chick added: Ember', '1012 g, crop empty', 'noted a day before'];
  const lost = await missing(page, all);
  await moveClock(page, '2026-11-24T20:56:00Z');
  await page.locator('.banner').waitFor({ state: 'detached' });
  tell({ fault: 'clock set back a day', trials: 1, lost, said });
});

test('with the clock a year ahead everything stays, and the screen says what was not noted since', async ({ bench }) => {
  const { page } = await withChickAt(bench, '2026-11-24T20:50:00Z', '2026-11-24');
  await logNextFeed(page);
  await weigh(page, 1012);
  await kept(page);
  await moveClock(page, '2027-11-24T20:55:00Z');
  await note(page, 'noted a year later');
  await reload(page);
  await go(page, '#/now');
  const lamp = page.locator('.lamp-band');
  await lamp.waitFor();
  const said = plain(await lamp.innerText());
  assert.match(said, /Has it eaten\? No food noted for/);
  const all = ['Chick added: Ember', 'Bedtime feed: 60 ml', '1012 g, crop empty', 'noted a year later'];
  const lost = await missing(page, all);
  // Back at the right time, what was noted a year later lies ahead, which is said.
  await moveClock(page, '2026-11-24T20:57:00Z');
  await storageNotice(page, /some entries are later than its clock/);
  lost.push(...(await missing(page, all)));
  tell({ fault: 'clock set forward a year', trials: 1, lost, said: said.match(/Has it eaten\?[^)]*\)/)[0] });
});

test('in another zone every entry keeps its day and time, and the plan goes on by the new wall clock', async ({ bench }) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site, { timezoneId: undefined });
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setTimezoneOverride', { timezoneId: 'Europe/London' });
  await clock(page, '2026-11-24T20:50:00Z');
  await openApp(page, site);
  await typeInChick(page);
  await page.clock.setSystemTime(new Date('2026-11-24T21:02:00Z'));
  await logNextFeed(page);
  await note(page, 'noted in London');
  const before = { words: await words(page), times: await times(page) };
  assert.equal(before.times.length, 3);
  // London is at UTC and New York 5 hours behind it in November (IANA zone database), so it is 16:05 there.
  await session.send('Emulation.setTimezoneOverride', { timezoneId: 'America/New_York' });
  await moveClock(page, '2026-11-24T21:05:00Z');
  assert.deepEqual({ words: await words(page), times: await times(page) }, before);
  // The bedtime feed was given at home and stays it. The longest gap of the plan is 10 h (21:00 to 07:00); a journey
  // makes it an hour longer at most: 08:00 in London is 03:00 here.
  const said = await nextFeed(page);
  assert.match(said, /^Nothing to feed until 03:00 Morning feed, in 10 h 55 min/);
  await note(page, 'noted in New York');
  await reload(page);
  // Which planned feed it counts for follows the clock in force; that it was given, and how much, stays.
  const given = (line) => line.replace(/^\w+ feed: /, '');
  const isThere = await words(page);
  const lost = before.words.filter((line) => !isThere.map(given).includes(given(line)));
  lost.push(...(await missing(page, ['noted in New York'])));
  assert.equal((await times(page))[0], '16:05');
  assert.deepEqual((await times(page)).slice(1), before.times);
  tell({ fault: 'zone changed in mid-plan', trials: 1, lost, said });
});

// In London clocks go back from 02:00 to 01:00 on 25 October 2026 and on from 01:00 to 02:00 on 28 March 2027, both at
// 01:00 UTC (the last Sundays: Directive 2000/84/EC, articles 2 and 3, which the United Kingdom's Summer Time Act 1972 as
// amended in 2002 keeps).
const nights = [
  {
    name: 'autumn',
    hatched: '2026-07-20',
    day: '2026-10-24',
    typedIn: '2026-10-24T19:50:00Z',
    // 21:05 in summer time; 07:00 in winter time is 07:00 UTC.
    evening: '2026-10-24T20:05:00Z',
    countdown: '10 h 55 min',
    inTheNight: [['2026-10-25T00:30:00Z', '01:30'], ['2026-10-25T01:30:00Z', '01:30']],
    morning: '2026-10-25T07:01:00Z',
  },
  {
    name: 'spring',
    hatched: '2026-12-20',
    day: '2027-03-27',
    typedIn: '2027-03-27T20:50:00Z',
    // 21:05 in winter time; 07:00 in summer time is 06:00 UTC.
    evening: '2027-03-27T21:05:00Z',
    countdown: '8 h 55 min',
    inTheNight: [['2027-03-28T00:30:00Z', '00:30'], ['2027-03-28T01:30:00Z', '02:30']],
    morning: '2027-03-28T06:01:00Z',
  },
];
for (const { name, hatched, day, typedIn, evening, countdown, inTheNight, morning } of nights) {
  test(`over the night in ${name} when the clocks change, entries keep their order and times and the next feed is right`, async ({ bench }) => {
    const site = await bench.site();
    const { page } = await bench.phone(site);
    await clock(page, typedIn);
    await openApp(page, site);
    await typeInChick(page, { ...CHICK, hatched, weighed: day });
    await moveClock(page, evening);
    await logNextFeed(page);
    await kept(page);
    const said = await nextFeed(page);
    assert.match(said, new RegExp(`^Nothing to feed until 07:00 Morning feed, in ${countdown}`));
    for (const [at, time] of inTheNight) {
      await moveClock(page, at);
      await note(page, `noted ${at}`);
      assert.equal((await times(page))[0], time);
    }
    await moveClock(page, morning);
    assert.match(await nextFeed(page), /^Morning feed/);
    await logNextFeed(page);
    await kept(page);
    await reload(page);
    const expected = ['Morning feed: 60 ml', ...inTheNight.map(([at]) => `noted ${at}`).reverse()];
    const found = await words(page);
    assert.deepEqual(found.slice(0, 3), expected, 'in the order in which it was lived');
    assert.equal(found.length, 5);
    tell({ fault: `the night in ${name} when the clocks change`, trials: 1, lost: await missing(page, expected), said });
  });
}
