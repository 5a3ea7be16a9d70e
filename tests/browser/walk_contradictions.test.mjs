// What a frightened owner reads twice on one screen must say the same, and what matters most must be in sight.
// The levels and hours are those of the trade, as in walk_frightened.test.mjs.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { ASPIRATION, BREEDER, NIGHT_VET, VET, at, day, noteSign, now, owner, quietDays } from './frightened.mjs';
import { leftBehind } from './glance.mjs';
import { shot } from './harness.mjs';
import { go, openSigns, plain, press, step, weigh } from './owner.mjs';

const RANKS = ['settled', 'watch', 'call', 'vet', 'emergency'];

// What must lie in sight without scrolling, above the bar at the bottom where there is one.
const isInSight = async (page, part) => {
  const [box, main] = await Promise.all([part.boundingBox(), page.locator('main').boundingBox()]);
  return box !== null && box.y >= main.y && box.y + box.height <= main.y + main.height;
};

test('no list of the day stands there while food is kept back', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:05');
  await noteSign(page, /^Feet and body cold/, 'l-first-aid');
  const { held, words } = await now(page, 'l-strip');
  assert.ok(held, words);
  assert.equal(await page.locator('.day-strip').count(), 0, 'nothing of the day stands beside it');
});

test('the lamp is never lower than what the card below it asks for', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  await noteSign(page, ASPIRATION, 'm-first-aid');
  for (const [number, time] of [[10, '07:11'], [12, '07:10'], [13, '07:30'], [15, '07:30']]) {
    await at(page, number, time);
    const { level, title, words } = await now(page, `m-lamp-${number}`);
    const asked = /set off/.test(title) ? 'emergency' : /Call the vet/.test(title) ? 'vet' : 'settled';
    assert.ok(RANKS.indexOf(level) >= RANKS.indexOf(asked), `day ${number}: ${level} above "${title}": ${words}`);
  }
});

test('where the lamp says emergency the card below says so too, not that the vet may be closed', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '06:45');
  await weigh(page, 985, 'empty');
  await noteSign(page, /^Fluffed up and sleepy/, 'n-first-aid');
  const { level, title, words } = await now(page, 'n-dull');
  // Part 1: a loss of 5 % or more: V; dull with it: E.
  assert.equal(level, 'emergency', words);
  assert.match(title, /set off/, title);
});

test('in an emergency "Do not feed" is in sight, above any question about feeds of before', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  await noteSign(page, ASPIRATION, 'o-first-aid');
  await at(page, 10, '08:10');
  const { words } = await now(page, 'o-sight');
  const title = page.locator('.next-feed__held');
  const asked = page.locator('[data-given]').first();
  if ((await asked.count()) > 0) {
    const [one, other] = await Promise.all([title.boundingBox(), asked.boundingBox()]);
    assert.ok(one.y < other.y, words);
  }
  assert.ok(await isInSight(page, title), words);
});

test('a tap on food in the windpipe shows whom to call without scrolling', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  await openSigns(page);
  await page.locator('button.sign', { hasText: ASPIRATION }).click();
  const call = page.locator('.dock a.call').first();
  await call.waitFor();
  await shot(page, 'frightened-p-call-in-sight');
  // Part 6: big STOP card, phone button on it.
  assert.ok(await isInSight(page, call));
});

test('three feeds refused in a row and a day without food are for the vet, also while it is weaned', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40);
  script.refused(`${day(10)}T21:05`, 'bedtime').refused(`${day(10)}T21:55`, 'bedtime');
  script.weighed(`${day(11)}T06:30`, 1030).note(`${day(11)}T06:35`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.refused(`${day(11)}T06:40`, 'morning').refused(`${day(11)}T07:30`, 'morning').refused(`${day(11)}T10:05`, 'morning');
  script.refused(`${day(11)}T14:00`, 'midday').refused(`${day(11)}T14:50`, 'midday');
  const page = await owner(bench, script, 11, '15:00');
  // Part 1: missed running, at or after the peak: 1 W, 2 B, 3 V; 24 h with no formula and no solids: V.
  const { level, words } = await now(page, 'q-three-refused');
  assert.ok(RANKS.indexOf(level) >= RANKS.indexOf('vet'), words);
});

test('at 02:30 a feed is offered only with what the crop must be like', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).refused(`${day(10)}T14:05`, 'midday').refused(`${day(10)}T17:30`, 'midday');
  const page = await owner(bench, script, 11, '02:30');
  const { words } = await now(page, 'r-night-hungry');
  // Part 1: after 24:00 only if the crop is flat or a trace, the chick warm and rousing.
  assert.match(plain(await page.locator('.next-feed').innerText()), /crop/i, words);
});

test('whoever is to be called stands there with a number, the out-of-hours vet too', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '22:10');
  await noteSign(page, /^Was fed formula at 43\.3/, 'u-first-aid');
  const { title, calls, words } = await now(page, 'u-night');
  assert.match(title, /Closed\? Call the out-of-hours vet/);
  assert.ok(calls.includes(NIGHT_VET), words);
});

// Filled with a colour of its own, that is no shade of the ground: the thing that is pressed first.
const filled = (page) =>
  page.evaluate(() => {
    const shown = [...document.querySelectorAll('.button, .call, .help')].filter((part) => part.checkVisibility());
    const strength = (part) => {
      const [red, green, blue] = getComputedStyle(part).backgroundColor.match(/[\d.]+/g).map(Number);
      return Math.max(red, green, blue) - Math.min(red, green, blue);
    };
    return shown.filter((part) => strength(part) > 90).map((part) => part.getAttribute('href') ?? part.innerText);
  });

test('where a vet is to see it today the call is the one filled button, and the feed waits below it', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).note(`${day(10)}T13:30`, 'sign-seen', { sign: 'lame' });
  const page = await owner(bench, script, 10, '14:00');
  const first = await now(page, 'y-vet-today');
  assert.equal(first.level, 'vet', first.words);
  assert.ok(!first.held, first.words);
  assert.deepEqual(await filled(page), [VET], first.words);
  assert.ok(await isInSight(page, page.locator('.dock a.call').first()));
  // The act, then the feed with its condition, and no countdown that says otherwise.
  assert.match(first.words, /Call the vet now\.[\s\S]*Midday feed at 14:00[\s\S]*40 ml[\s\S]*Call first\. Then feed as planned, unless they say otherwise\./);
  assert.equal(await page.locator('.next-feed__countdown').count(), 0);
  for (const name of ['#/weight', '#/guide', '#/log']) {
    await go(page, name);
    await page.locator('main a.call, main #taken').first().waitFor();
    await shot(page, `frightened-y${name.replace('#/', '-')}`);
    const all = await filled(page);
    assert.ok(all.length <= 1, `${name}: ${all}`);
    if (name !== '#/log') {
      assert.deepEqual(all, [VET], name);
    }
  }
  await go(page, '#/guide');
  assert.match(plain(await page.locator('main').innerText()), /Call the vet now\.[\s\S]*Then feed as planned/);
  await press(page, 'Go on to the feed');
  await page.getByRole('button', { name: 'flat', exact: true }).waitFor();
  // On the scale too.
  await go(page, '#/now');
  await page.locator('.next-feed a[href="#/guide"]').waitFor();
  await weigh(page, 1035, 'after feed');
  await page.locator('.weigh__kept').waitFor();
  await shot(page, 'frightened-y-weighed');
  assert.deepEqual(await filled(page), [VET]);
});

test('what the page before the app says first is the call, where that comes before the feed', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60);
  const page = await owner(bench, script, 10, '14:00');
  await noteSign(page, /^Lame/, 'y-lame');
  await now(page, 'y-lame-now');
  const answer = (await leftBehind(page, 'answer')).map(([text]) => plain(text));
  assert.equal(answer[0], 'Call the vet now.');
  assert.ok(answer.indexOf('Call first. Then feed as planned, unless they say otherwise.') < answer.findIndex((line) => /Midday feed/.test(line)), answer.join(' '));
  assert.equal((await leftBehind(page, 'due')).length, 0, 'nothing counts down to a feed');
});

test('whom a vet told to feed has the feed as the next act again, until something else is seen', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).note(`${day(10)}T13:00`, 'sign-seen', { sign: 'lame' });
  script.note(`${day(10)}T13:30`, 'advice-noted', { who: 'avian-vet', about: '', may_feed: true });
  const page = await owner(bench, script, 10, '14:00');
  const told = await now(page, 'y-told');
  assert.equal(told.level, 'vet', told.words);
  assert.deepEqual(await filled(page), ['#/guide'], told.words);
  await noteSign(page, /^Begs/, 'y-begs');
  const again = await now(page, 'y-told-again');
  assert.deepEqual(await filled(page), [VET], again.words);
});

test('after a bad night a low weight is never said to need no call, nor to wait for the breeder\'s hours', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40);
  script.refused(`${day(10)}T21:45`, 'bedtime').refused(`${day(10)}T22:31`, 'bedtime');
  const page = await owner(bench, script, 11, '06:40');
  // Fed at 14:05 last: 16 h 35 min, over the 12 h of the trade, so the breeder is called now.
  const morning = await now(page, 'z-morning');
  assert.equal(morning.level, 'call', morning.words);
  assert.match(morning.words, /Call the breeder now, whatever the hour\./);
  assert.doesNotMatch(morning.words, /In their hours|in their hours/);
  assert.deepEqual(await filled(page), [BREEDER], morning.words);
  // (1041 - 957) / 1041 = 8.1 % in a day.
  await weigh(page, 957, 'empty');
  await page.locator('.weigh__told').waitFor();
  const said = plain(await page.locator('main').innerText());
  await shot(page, 'frightened-z-weighed');
  assert.doesNotMatch(said, /No call for one reading|in their hours|Not because of the weight/i);
  const [called, ...others] = await filled(page);
  assert.deepEqual(others, []);
  const level = await page.locator('.weigh__told').getAttribute('data-level');
  assert.equal(called, level === 'call' ? BREEDER : NIGHT_VET, said);
  await press(page, 'Weigh again');
  await page.locator('#weight').fill('957');
  await press(page, 'Keep');
  await page.locator('.weigh__told[data-level="vet"]').waitFor();
  assert.doesNotMatch(plain(await page.locator('main').innerText()), /in their hours/i);
  assert.deepEqual(await filled(page), [NIGHT_VET]);
  for (const name of ['#/now', '#/weight']) {
    await go(page, name);
    await page.locator('a.call').first().waitFor();
    const words = plain(await page.locator('main').innerText());
    await shot(page, `frightened-z${name.replace('#/', '-')}`);
    assert.doesNotMatch(words, /Not because of the weight|in their hours/i, name);
    assert.deepEqual(await filled(page), [NIGHT_VET], words);
  }
});

// In the guide, half of the morning feed given, when it goes wrong.
const wrongAtAFeed = async (bench) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041);
  const page = await owner(bench, script, 10, '07:00');
  await page.getByRole('link', { name: 'Feed now' }).click();
  await press(page, 'flat');
  await step(page, 'Mix');
  await press(page, 'It is mixed');
  await step(page, 'Temperature');
  await page.locator('#cup').fill('40');
  await press(page, 'Measured');
  await press(page, 'Next');
  await press(page, 'Next');
  await press(page, 'Position is good');
  await press(page, 'Yes, it bobs and swallows');
  await step(page, 'Give');
  await page.locator('.guide__next').click();
  await page.locator('.guide__number', { hasText: /^30\sml of 60\sml given$/ }).waitFor();
  await page.locator('.guide__stop').click();
  await noteSign(page, ASPIRATION, 'v-first-aid');
  return page;
};

test('a feed that went wrong is not to be started again, however old its mix', async ({ bench }) => {
  const page = await wrongAtAFeed(bench);
  await at(page, 10, '08:05');
  const { words } = await now(page, 'v-under-way');
  assert.doesNotMatch(words, /start again/i);
  await go(page, '#/guide');
  await page.locator('.question .guard').first().waitFor();
  await shot(page, 'frightened-v-guide');
  assert.doesNotMatch(plain(await page.locator('main').innerText()), /start again|go on feeding/i);
});

test('what went in before it went wrong is told to the vet', async ({ bench }) => {
  const page = await wrongAtAFeed(bench);
  await now(page, 'w-what-to-say');
  await page.locator('.what-to-say summary').click();
  // Part 20, what a vet asks: last feed: hour, ml. 30 of 60 ml at 07:00.
  assert.match(plain(await page.locator('.what-to-say__lines').innerText()), /Tue 10 Nov, 07:00: 30 ml/);
});

test('where the guide and the log say to call, the number stands there', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  await noteSign(page, ASPIRATION, 'x-first-aid');
  for (const place of ['#/guide', '#/log']) {
    await go(page, place);
    const held = page.locator('main .question');
    await held.waitFor();
    assert.match(plain(await held.innerText()), /Call the vet now/);
    assert.ok((await page.locator('main a.call').count()) > 0, place);
  }
});
