// A frightened first-time owner: something is wrong, and what the top of Now says must hold further down.
//
// The levels and hours are those of the trade: W watch, B the breeder, V a vet today, E at once; beside each
// check stands what it comes from. The chick is 19 to 21 weeks old, feathered, on 60, 40 and 60 ml a day.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { ASPIRATION, BREEDER, NIGHT_VET, VET, at, crop, day, feedsNowhere, noteSign, now, owner, picture, quietDays } from './frightened.mjs';
import { go, openApp, plain, press, weigh } from './owner.mjs';
import { Script, clockAt, takeIn } from './script.mjs';

test('a crop half full in the morning is an emergency, and nothing below it feeds', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  await crop(page, 'half or more');
  // Part 2, morning ladder: half or more, over 8 h after the feed of 21:05: E.
  const first = await now(page, 'a-crop');
  assert.equal(first.level, 'emergency', first.words);
  assert.match(first.title, /^Do not feed\./);
  assert.equal(first.calls[0], NIGHT_VET);
  await feedsNowhere(page);
  // Part 2: a bright chick never cancels a full morning crop; it stands until the crop is seen.
  await at(page, 10, '09:10');
  const later = await now(page, 'a-crop-2h');
  assert.equal(later.level, 'emergency', later.words);
  assert.ok(later.held, later.words);
});

test('refused at 22:00: what is said then, at the next try, and after the last one', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '21:00');
  const script = new Script(7);
  script.last += 500;
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40).droppings(`${day(10)}T17:00`);
  await takeIn(page, script);
  const refuse = async () => {
    await go(page, '#/log');
    await press(page, 'It refused');
    await page.locator('.status-line', { hasText: 'refused' }).waitFor();
  };
  await at(page, 10, '22:00');
  await refuse();
  // Part 1: one refusal at weaning age and 90 % of the peak is W; again 30 to 60 min later, 45 by default.
  const first = await now(page, 'b-refused');
  assert.equal(first.level, 'watch', first.words);
  assert.match(first.words, /22:45/, first.words);
  assert.match(first.words, /Mix fresh and offer it again/);
  // Part 20: one refusal is not for out of hours.
  assert.deepEqual(first.calls, []);
  await at(page, 10, '22:46');
  const again = await now(page, 'b-again');
  assert.equal(again.level, 'watch', again.words);
  await refuse();
  // Part 1: no retry after 24:00 when half of the day's ml is in; 22:46 and 2.5 h are 01:16, 100 of 160 ml are in.
  const last = await now(page, 'b-last');
  assert.doesNotMatch(last.words, /01:1\d/, last.words);
  assert.match(last.words, /Morning feed/, last.words);
  assert.ok(['watch', 'call'].includes(last.level), last.words);
  // Part 1: next feed of normal size, not doubled.
  assert.match(last.words, /60 ml/);
  assert.match(last.words, /Nothing more tonight\. If it is warm and calm, let it sleep\./);
  // The first feed may come an hour early, at 06:00, and is not late before its own time.
  await at(page, 11, '06:50');
  const morning = await now(page, 'b-morning');
  assert.notEqual(morning.level, 'settled', morning.words);
  assert.doesNotMatch(morning.words, /min late/, morning.words);
});

test('food in the windpipe: first aid, then nothing to eat, and it still stands after 48 hours', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  const answer = await noteSign(page, ASPIRATION, 'c-first-aid');
  // Part 6: gaping, blue: E at once; head slightly lower, let it shake and cough, wipe, no water, no more food.
  assert.equal(answer.level, 'emergency');
  assert.match(answer.said, /Stop\.\s+Take spoon or syringe away.*head slightly lower.*shake and cough.*Wipe/s);
  assert.match(answer.said, /no (water|food|more food)|not give|nothing/i, answer.said);
  assert.doesNotMatch(answer.said, /[^t] (hang|turn) it upside down/i);
  assert.equal(answer.calls[0], NIGHT_VET);
  const first = await now(page, 'c-aspiration');
  assert.equal(first.level, 'emergency', first.words);
  assert.match(first.title, /^Do not feed\. Call the vet now and set off\.$/);
  await feedsNowhere(page);
  // Part 6: breathing at 10, 30, 60 min; 72 h of watching.
  await at(page, 10, '08:10');
  const hour = await now(page, 'c-aspiration-60min');
  assert.equal(hour.level, 'emergency', hour.words);
  assert.match(hour.words, /10, 30 and 60 minutes/, hour.words);
  for (const [number, time, name] of [[12, '07:10', 'c-aspiration-48h'], [13, '07:30', 'c-aspiration-72h']]) {
    await at(page, number, time);
    const later = await now(page, name);
    assert.ok(later.held, later.words);
    assert.match(later.title, /^(Do not feed|Ask the vet)/, later.words);
    assert.ok(later.calls.includes(NIGHT_VET) || later.calls.includes(VET), later.words);
  }
});

test('a cold chick is warmed and not fed', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '06:55');
  const answer = await noteSign(page, /^Feet and body cold/, 'd-first-aid');
  // Part 2, last row of the ladder, and part 1: cold: E.
  assert.equal(answer.level, 'emergency');
  assert.match(answer.said, /Warm it slowly/);
  const first = await now(page, 'd-cold');
  assert.equal(first.level, 'emergency', first.words);
  assert.match(first.title, /^Do not feed/);
  assert.match(first.words, /Warm it slowly/);
  await feedsNowhere(page);
});

test('tar-black droppings are for the vet today, who is asked before any feed', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '13:30');
  await go(page, '#/droppings');
  await page.getByRole('radio', { name: /tar/i }).check();
  await press(page, 'Keep');
  // Part 5: black-green, sticky, tar-like: V today.
  const first = await now(page, 'e-tar');
  assert.equal(first.level, 'vet', first.words);
  assert.equal(first.calls[0], VET);
  assert.match(first.title, /^Ask the vet before any feed\./);
  await feedsNowhere(page);
});

test('a bedtime feed found forgotten at 22:30 is given once, as usual', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40);
  const page = await owner(bench, script, 10, '22:30');
  // Part 1, forgotten feed: before 24:00, crop empty: one usual feed. App: "late", not a fault.
  const found = await now(page, 'f-forgotten');
  assert.ok(!found.held, found.words);
  assert.ok(['settled', 'watch'].includes(found.level), found.words);
  assert.match(found.words, /Bedtime feed.*60 ml/s);
  assert.match(found.words, /You may still give it now/);
  await go(page, '#/log');
  await press(page, 'Done');
  await page.locator('.status-line', { hasText: 'Bedtime feed' }).waitFor();
  // Part 1: the next not before the shortest gap, 6 h after 24:00: 04:30; the plan's morning feed is at 07:00.
  const next = await now(page, 'f-given');
  assert.match(next.words, /Morning feed/);
  assert.match(next.words, /at 07:00[\s\S]*60 ml|07:00[\s\S]*Morning feed, in/);
});

test('found forgotten at 02:30 with more than half of the day in, it is left to sleep', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40);
  const page = await owner(bench, script, 11, '02:30');
  // Part 1: after 24:00, feathered, half of the day's ml taken (100 of 160): let it sleep, first feed about 06:00.
  const found = await now(page, 'g-night');
  assert.ok(!/You may still give it now/.test(found.words), found.words);
  assert.match(found.words, /Morning feed/, found.words);
  assert.match(found.words, /0[67]:00/, found.words);
  assert.ok(['settled', 'watch'].includes(found.level), found.words);
});

test('found forgotten at 02:30 with less than half of the day in, one feed may still be given', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).refused(`${day(10)}T14:05`, 'midday').refused(`${day(10)}T17:30`, 'midday');
  const page = await owner(bench, script, 11, '02:30');
  // Part 1: under half of the day's ml (60 of 160): only if the crop is flat or a trace, one usual feed.
  const found = await now(page, 'g-night-hungry');
  assert.match(found.words, /Look at the crop|crop first|Bedtime feed/, found.words);
  assert.notEqual(found.level, 'settled', found.words);
});

test('12 % below a fat peak, bright and weaning: the breeder is called, and it is fed', async ({ bench }) => {
  const script = new Script(8);
  const date = (number) => new Date(Date.UTC(2026, 9, 4 + number)).toISOString().slice(0, 10);
  script.added(`${date(0)}T12:00`, { reference: { g10: 11000, day: date(0) } }).note(`${date(0)}T12:05`, 'arrived');
  script.fed(`${date(0)}T14:05`, 'midday', 40).fed(`${date(0)}T21:05`, 'bedtime', 60);
  // 1100 g to 1180 g in ten days, three days there, then 142 g in 31 days: 0.39 % of the peak a day.
  const grams = [1108, 1116, 1124, 1132, 1140, 1148, 1156, 1164, 1172, 1180, 1181, 1180, 1179];
  for (let step = 1; step <= 31; step += 1) {
    grams.push(Math.round(1180 - (142 / 31) * step));
  }
  grams.forEach((weight, index) => {
    const on = date(index + 1);
    script.weighed(`${on}T06:45`, weight).note(`${on}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
    script.fed(`${on}T07:05`, 'morning', 60).fed(`${on}T21:05`, 'bedtime', 60);
    script.solids(`${on}T16:00`, 'meal').droppings(`${on}T17:00`);
    if (index < 30) {
      script.fed(`${on}T14:05`, 'midday', 40);
    } else if (index === 30) {
      script.note(`${on}T13:00`, 'feed-dropped', { slot: 'midday', by_breeder: true });
    }
  });
  const last = date(grams.length);
  // All but the last day's feeds: this is its morning, before the first of them.
  script.entries = script.entries.filter((entry) => entry.at <= Date.parse(`${last}T06:55:00Z`) / 1_000);
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clockAt(page, `${last}T06:55:00Z`);
  await openApp(page, site);
  await takeIn(page, script);
  // (1180 - 1038) / 1180 = 12.0 %. Part 3: of the peak, a large macaw: 10 B, 15 V.
  const seen = await now(page, 'h-peak');
  assert.equal(seen.level, 'call', seen.words);
  assert.match(seen.words, /1[12]\.\d\s% below its highest/, seen.words);
  assert.equal(seen.calls[0], BREEDER);
  // Weight is no reason to keep food back.
  assert.ok(!seen.held, seen.words);
  await go(page, '#/weaning');
  await picture(page, 'h-peak-weaning');
});

test('a sour crop is an emergency and keeps all food back', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '13:30');
  const answer = await noteSign(page, /^Crop smells sour/, 'i-first-aid');
  // Part 2, last row of the ladder; part 20: sour: E.
  assert.equal(answer.level, 'emergency');
  const first = await now(page, 'i-sour');
  assert.equal(first.level, 'emergency', first.words);
  assert.match(first.title, /^Do not feed\. Call the vet now and set off\.$/);
  await feedsNowhere(page);
});

test('fed too hot: the vet is asked now, however well it looks, and three days later', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '07:10');
  const answer = await noteSign(page, /^Was fed formula at 43\.3/, 'j-first-aid');
  // Served at 43.3 C or more: a vet now, do not wait for marks (Rivera 2008; the first dossier, part 8).
  assert.equal(answer.level, 'vet');
  assert.match(answer.said, /Call now, even if the chick looks well/);
  const first = await now(page, 'j-hot');
  assert.equal(first.level, 'vet', first.words);
  assert.match(first.title, /^Ask the vet before any feed\./);
  // At 07:10 a practice is still closed.
  assert.equal(first.calls[0], NIGHT_VET);
  await feedsNowhere(page);
  await at(page, 13, '07:30');
  const later = await now(page, 'j-hot-72h');
  assert.ok(later.held, later.words);
  assert.ok(later.calls.includes(VET), later.words);
});

test('5 % lighter in a day and dull: the vet, and no feed before', async ({ bench }) => {
  const page = await owner(bench, quietDays(), 10, '06:45');
  await weigh(page, 985, 'empty');
  // (1041 - 985) / 1041 = 5.4 %.
  await noteSign(page, /^Fluffed up and sleepy/, 'k-first-aid');
  // Part 3: one day, 5 % with any other sign: V; part 1: any loss of 5 % or dullness: V, dull: E.
  const first = await now(page, 'k-dull');
  assert.ok(['vet', 'emergency'].includes(first.level), first.words);
  assert.ok(first.held, first.words);
  await feedsNowhere(page);
});

test('found forgotten at 02:30 and noted as not given, the first feed comes early', async ({ bench }) => {
  const script = quietDays();
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40);
  const page = await owner(bench, script, 11, '02:30');
  await press(page, 'Not given');
  // Part 1: let it sleep; first feed early, about 06:00.
  const { level, words } = await now(page, 's-not-given');
  assert.match(words, /Morning feed.*06:00/s, words);
  assert.match(words, /Nothing more tonight\. If it is warm and calm, let it sleep\./, words);
  assert.ok(['watch', 'call'].includes(level), words);
});
