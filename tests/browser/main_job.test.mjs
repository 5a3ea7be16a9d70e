// The main job, end to end: a made-up chick from the first start to the next day, also without a network.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, clock, offlineReady, started } from './harness.mjs';
import { CHICK, EVENING, go, journalWords, kept, logNextFeed, openApp, plain, press, typeInChick, weigh, weighTwice } from './owner.mjs';
import { Script, clockAt, takeIn } from './script.mjs';

// A Tuesday evening in London, ten minutes before the bedtime feed.

const ownerWithChick = async (bench, at = EVENING) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await clock(page, at);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  return { site, context, page };
};

test('typed in, fed at bedtime in two taps, weighed, and all there after a reload without the server', async ({ bench }) => {
  const { site, page } = await ownerWithChick(bench);
  await page.clock.fastForward('00:01');
  assert.match(await page.locator('.next-feed').innerText(), /Bedtime feed at 21:00\s+10\smin\s+60\sml/);

  await logNextFeed(page);
  await kept(page);
  assert.match(await page.locator('.status-line').innerText(), /Bedtime feed, 60\sml\. Kept\./);
  assert.match(await page.locator('.next-feed').innerText(), /Morning feed/);

  await page.clock.fastForward('00:05');
  await weigh(page, 1012);
  await kept(page);
  // (1040 - 1012) / 1040 = 2.69 %
  assert.match(plain(await page.locator('.weigh__undo').innerText()), /^1012 g, 20:5\d\. Kept\./);
  await go(page, '#/weight');
  // 1040 - 1012 = 28 g; 5 % of 1012 g within a day are for a call, at 961 g and below; 10 % of 1040 g only at 936 g.
  assert.match(plain(await page.locator('.verdict').innerText()), /28 g \(2\.7 %\) below handover\.[^]*961 g/);
  assert.equal(plain(await page.locator('.chart__point strong').innerText()), 'Tue 24 Nov, 1012 g');

  await offlineReady(page);
  await site.stop();
  await page.reload();
  await started(page);
  const words = await journalWords(page);
  assert.deepEqual(words.map((line) => line.replaceAll('\u00a0', ' ').trim()), [
    '1012 g, crop empty',
    'Bedtime feed: 60 ml',
    'Chick added: Ember',
  ]);
});

test('undo takes an entry back, and undo again brings it back', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await logNextFeed(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.locator('.status-line', { hasText: 'Taken back' }).waitFor();
  await go(page, '#/now');
  assert.match(await page.locator('.next-feed').innerText(), /Bedtime feed/);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.locator('.next-feed', { hasText: 'Morning feed' }).waitFor();
});

test('what the breeder wrote stands beside the next feed as it was typed, and an empty note nowhere', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  assert.equal(await page.getByRole('heading', { name: 'From the breeder' }).count(), 0);
  const note = 'Likes it slow.\n<b>From the left.</b>';
  await takeIn(page, new Script(2).added('2026-11-24T12:00', { note }));
  await page.getByRole('heading', { name: 'From the breeder' }).waitFor();
  assert.equal(await page.locator('.as-typed').innerText(), note);
});

test('an emergency without a vet in the plan says so and leads to the plan', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await go(page, '#/wrong');
  await page.getByRole('button', { name: 'Cold', exact: true }).click();
  await page.locator('.answer[data-level="emergency"]').waitFor();
  const answer = page.locator('.dock');
  assert.match(await answer.innerText(), /No vet's number is saved here\. Look up the nearest avian vet and call now\./);
  assert.equal(await answer.locator('a.call').count(), 1);
  assert.equal(await answer.getByRole('link', { name: 'Add the number to the plan' }).getAttribute('href'), '#/plan');
});

test('a loss over the limit lights the lamp, with the number to ring', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-25T06:45:00Z');
  await weighTwice(page, 930);
  await go(page, '#/now');
  // (1040 - 930) / 1040 = 10.58 %, over the plan's 10 %
  await page.locator('.lamp-band[data-level="call"]').waitFor();
  assert.match(await page.locator('.lamp-band').innerText(), /10\.6\s%/);
  const call = page.locator('.lamp-band a.call').first();
  assert.equal(await call.getAttribute('href'), 'tel:+15550100');
  await page.locator('.what-to-say summary').click();
  assert.match(await page.locator('.what-to-say__lines').innerText(), /930\sg/);
});

test('a tapped call is noted once somebody was reached, and no answer says whom to call next', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-25T06:45:00Z');
  await weighTwice(page, 930);
  await go(page, '#/now');
  // No telephone opens here.
  await page.evaluate(() => addEventListener('click', (event) => event.target.closest('a.call') && event.preventDefault()));
  const band = page.locator('.lamp-band');
  const question = band.locator('[data-reached]', { hasText: 'Did you reach them?' });
  const isNoted = async () => (await journalWords(page)).some((line) => line.startsWith('Called:'));
  await band.locator('a.call').first().click();
  await question.waitFor();
  assert.equal(await isNoted(), false, 'a tap is no call made');
  await go(page, '#/now');
  await question.getByRole('button', { name: 'No answer' }).click();
  await band.locator('.question', { hasText: 'No answer in 30 minutes? Call the vet.' }).waitFor();
  assert.equal(await isNoted(), false, 'nobody was reached');
  await go(page, '#/now');
  await band.locator('a.call').first().click();
  await question.getByRole('button', { name: 'Yes, note the call' }).click();
  await question.waitFor({ state: 'detached' });
  assert.equal(await isNoted(), true);
});

test('a weight that does not fit is asked about, and the slip is offered mended', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await weigh(page, 10120);
  await page.locator('.question', { hasText: 'The last was 1040' }).waitFor();
  await page.getByRole('button', { name: 'I meant 1012' }).click();
  assert.equal(await page.locator('#weight').inputValue(), '1012');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.locator('.weigh__kept', { hasText: '1012' }).waitFor();
});

test('a refused weight that is confirmed is still kept when a chick can weigh it', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await weigh(page, 1400);
  await page.getByRole('button', { name: 'Yes, that is what the scale says' }).click();
  await page.locator('.weigh__kept', { hasText: '1400' }).waitFor();
});

test('the countdown is right after the phone slept for three hours', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-24T16:00:00Z');
  assert.match(await page.locator('.next-feed__countdown').innerText(), /^5\sh$/);
  await page.clock.fastForward('03:00:00');
  await page.locator('.next-feed__countdown', { hasText: /^2\sh$/ }).waitFor();
});

test('a bedtime feed without a note is asked about in the morning, and one tap answers', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await page.clock.fastForward('09:00:00');
  const question = page.locator('[data-given]', { hasText: 'Bedtime feed' });
  await question.waitFor();
  const next = await page.locator('.next-feed').innerText();
  assert.match(next, /Morning feed/);
  assert.match(next, /60\sml/);
  await question.getByRole('button', { name: /^Given/ }).click();
  await page.locator('.status-line', { hasText: /Bedtime feed, 60\sml/ }).waitFor();
  await question.waitFor({ state: 'detached' });
});

test('a feed is known by its time, and what a person says otherwise is kept as said', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-25T06:45:00Z');
  const counts = page.locator('[data-counts]');
  const named = async (name) => {
    await go(page, '#/log');
    await counts.locator('summary').click();
    await page.getByRole('radio', { name }).check();
    await press(page, 'Done');
  };
  await clockAt(page, '2026-11-25T07:05:00Z');
  await go(page, '#/log');
  assert.equal(plain(await counts.locator('summary').innerText()), 'Counts as: Morning feed, 07:00');
  await press(page, 'Done');
  await page.locator('.status-line', { hasText: /Morning feed, 60\sml/ }).waitFor();
  assert.match(await page.locator('.next-feed').innerText(), /Midday feed/);

  await clockAt(page, '2026-11-25T11:00:00Z');
  await named('Bedtime feed');
  await page.locator('.status-line', { hasText: /Bedtime feed, 60\sml/ }).waitFor();
  const lines = await journalWords(page);
  assert.deepEqual(lines.map(plain).slice(0, 2), ['Bedtime feed: 60 ml', 'Morning feed: 60 ml']);
});

test('a bedtime feed after midnight is noted as one, and one that is put off past midnight says so', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await clockAt(page, '2026-11-25T02:30:00Z');
  await go(page, '#/log');
  assert.equal(plain(await page.locator('[data-counts] summary').innerText()), 'Counts as: Bedtime feed, 21:00');
  await press(page, 'Done');
  await page.locator('.status-line', { hasText: /Bedtime feed, 60\sml/ }).waitFor();
  // six hours after 02:30
  await page.locator('.next-feed', { hasText: '08:30' }).waitFor();
  assert.match(await page.locator('.next-feed').innerText(), /Morning feed/);

  await clockAt(page, '2026-11-25T20:30:00Z');
  await go(page, '#/log/midday');
  await press(page, 'Done');
  await page.locator('.status-line', { hasText: /Midday feed/ }).waitFor();
  // 40 ml of the day's 160 are in: six hours after 20:30
  const last = page.locator('.day-strip__list li').last();
  assert.match(plain(await last.innerText()), /^02:30 Bedtime feed: after midnight, 60 ml$/);
});

test('after a refusal a second try is of that feed, also in the guide', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-25T13:45:00Z');
  await clockAt(page, '2026-11-25T14:00:00Z');
  await go(page, '#/log');
  await press(page, 'It refused');
  await page.locator('.status-line', { hasText: 'Midday feed: refused' }).waitFor();
  await clockAt(page, '2026-11-25T15:00:00Z');
  await go(page, '#/guide');
  assert.match(plain(await page.locator('.guide__head').innerText()), /^Midday feed, 40 ml\s+1\/8/);
  await go(page, '#/log');
  assert.equal(plain(await page.locator('[data-counts] summary').innerText()), 'Counts as: Midday feed, 14:00');
  await press(page, 'Done');
  await page.locator('.status-line', { hasText: /Midday feed, 40\sml/ }).waitFor();
  assert.match(await page.locator('.next-feed').innerText(), /Bedtime feed/);
});

test('a fault in a closed part of a form opens it', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await go(page, '#/log');
  const part = page.locator('summary', { hasText: 'Temperature, and how it ate' });
  await part.click();
  await page.locator('#served-at').fill('400');
  await part.click();
  await page.locator('#served-at').waitFor({ state: 'hidden' });
  await press(page, 'Done');
  await page.locator('#served-at:focus').waitFor();
});

test('with ounces on screen a weight that nobody touched keeps the breeder\'s grams, and powder is weighed in grams', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await go(page, '#/settings');
  await page.getByRole('radio', { name: 'oz', exact: true }).check();
  await go(page, '#/plan');
  // 1040 g are 36.7 oz (28.3495 g each, NIST), and those would be 1040.4 g.
  assert.equal(await page.locator('#handover-weight').inputValue(), '36.7');
  await page.locator('#name').fill('Ember II');
  await press(page, 'Save the changes');
  await kept(page);
  await go(page, '#/guide');
  await press(page, 'flat');
  // 60 ml and 12 ml of allowance at a quarter of powder: 18 g.
  assert.match(plain(await page.locator('.amounts').innerText()), /54 g\s+Powder\s+18 g/);
  await go(page, '#/settings');
  await page.getByRole('radio', { name: 'g', exact: true }).check();
  await go(page, '#/plan');
  assert.equal(await page.locator('#handover-weight').inputValue(), '1040');
});

test('another chick\'s call stands on the screen of the one that is well, and leads there', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-25T06:45:00Z');
  await weighTwice(page, 930);
  await kept(page);
  await go(page, '#/start');
  await typeInChick(page, { ...CHICK, name: 'Flint', weighed: '2026-11-25' });
  const other = page.locator('[data-other]');
  await other.waitFor();
  assert.equal(plain(await other.innerText()), 'Ember: Call the breeder');
  assert.deepEqual(await axe(page), []);
  await other.click();
  await page.locator('.top-bar', { hasText: 'Ember' }).waitFor();
  await page.locator('.lamp-band[data-level="call"]').waitFor();
  assert.equal(await other.count(), 0);
});

test('a feed that is to be offered again stands on Now, below the next feed, with the way to it', async ({ bench }) => {
  const { page } = await ownerWithChick(bench, '2026-11-25T06:50:00Z');
  const script = new Script(5).added('2026-11-10T12:00', { name: 'Sorrel' });
  ['21', '22', '23'].forEach((day) => script.weighed(`2026-11-${day}T06:45`, 1040).fed(`2026-11-${day}T07:00`, 'morning', 60).fed(`2026-11-${day}T21:00`, 'bedtime', 60));
  script.note('2026-11-23T09:00', 'feed-dropped', { slot: 'midday', by_breeder: true });
  // Two mornings after the drop: 1003 of 1040 g are 3.6 % less.
  script.weighed('2026-11-24T06:45', 1020).fed('2026-11-24T07:00', 'morning', 60).fed('2026-11-24T21:00', 'bedtime', 60).weighed('2026-11-25T06:45', 1003);
  await takeIn(page, script);
  const back = page.locator('[data-back]');
  await back.filter({ hasText: /offer the midday feed again: it lost 3\.6\s%/i }).waitFor();
  const [next, below] = await Promise.all([page.locator('.next-feed').boundingBox(), back.boundingBox()]);
  assert.ok(next.y < below.y);
  await back.getByRole('link', { name: 'Weaning' }).click();
  await press(page, 'Offer the midday feed again');
  await go(page, '#/now');
  await back.waitFor({ state: 'detached' });
});

test('a link of a newer version says so', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, EVENING);
  await openApp(page, site, '#pl2c.AAAA');
  await page.locator('.fault', { hasText: /newer version/i }).waitFor();
  assert.doesNotMatch(page.url(), /pl2c/);
});

test('a sign that forbids feeding stops the guide before its first step, until it is gone', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await go(page, '#/wrong');
  await page.locator('.sign', { hasText: /cold/i }).first().click();
  await page.getByRole('button', { name: 'Note it in the journal' }).click();
  await go(page, '#/guide');
  await page.locator('.question', { hasText: 'Do not feed' }).waitFor();
  assert.equal(await page.getByRole('button', { name: 'flat', exact: true }).count(), 0);
  await page.clock.fastForward('00:05');
  await go(page, '#/wrong');
  await page.locator('.sign', { hasText: /cold/i }).first().click();
  await page.getByRole('button', { name: 'It is gone' }).click();
  await go(page, '#/guide');
  await page.getByRole('button', { name: 'flat', exact: true }).waitFor();
});

test('while food is forbidden Now offers none, and the log asks before it takes any', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await go(page, '#/wrong');
  await page.locator('.sign', { hasText: /cold/i }).first().click();
  await page.getByRole('button', { name: 'Note it in the journal' }).click();
  await go(page, '#/now');
  const card = page.locator('.next-feed[data-state="held"]');
  await card.waitFor();
  await page.locator('.lamp-band', { hasText: 'Do not feed. Call the vet now and set off.' }).waitFor();
  assert.equal(await page.locator('.next-feed__countdown').count(), 0);
  assert.equal(await page.getByRole('link', { name: 'Feed now' }).count(), 0);
  await page.getByRole('link', { name: 'Log a feed' }).click();
  await page.locator('[data-held]', { hasText: 'Do not feed' }).waitFor();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await press(page, 'It was not given');
  await card.waitFor();
  assert.equal((await journalWords(page)).some((line) => line.startsWith('Bedtime feed')), false);
  await go(page, '#/now');
  await page.getByRole('link', { name: 'Log a feed' }).click();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await press(page, 'It was given: note it');
  await page.locator('.status-line', { hasText: 'Bedtime feed, 60' }).waitFor();
});

test('the arrival sets settle-in, vet and quarantine dates, and powder lasts by what is mixed', async ({ bench }) => {
  const { page } = await ownerWithChick(bench);
  await go(page, '#/home');
  await page.getByRole('button', { name: 'It is home now' }).click();
  // arrived on Tue 24 Nov: 7 settle-in days, 3 days to the vet, 45 days apart
  const text = page.locator('.page');
  await page.locator('li', { hasText: 'drop no feed before Tue 1 Dec' }).waitFor();
  assert.match(await text.innerText(), /by Fri 27 Nov/);
  assert.match(await text.innerText(), /until Fri 8 Jan/);
  await page.locator('#powder-stock').fill('lots');
  await page.locator('#powder-stock').press('Enter');
  await page.locator('.fault', { hasText: 'Type digits only' }).waitFor();
  await page.locator('#powder-stock').fill('500');
  await page.locator('#powder-stock').press('Enter');
  await page.locator('p', { hasText: /About 500\sg of powder left/ }).waitFor();
  await page.locator('#room').fill('19');
  await page.locator('#room').press('Enter');
  await go(page, '#/now');
  // below 21 degrees a feathered chick is to be looked after
  await page.locator('.lamp-band', { hasText: /19\.0/ }).waitFor();
});
