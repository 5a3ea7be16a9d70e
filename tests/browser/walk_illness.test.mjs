// A chick that falls ill: what the lamp says each morning while the weight falls.
//
// The plan's loss limit is the published 10 % (Duerr & Gage 2020, p. 599). The steps around it are ours:
// watch at 0.7 times, vet today at 1.5 times the limit; so is the rule that rings before the limit is
// reached, and therefore no day is asked of it here, only that it is not later than the limit.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, shot } from './harness.mjs';
import { go, openApp, openSigns, weigh } from './owner.mjs';
import { Script, clockAt, lamp, takeIn } from './script.mjs';

const LEVELS = ['settled', 'watch', 'call', 'vet', 'emergency'];
const rank = (level) => LEVELS.indexOf(level);
const HANDOVER = 1040;

const day = (number) => `2026-11-${String(number).padStart(2, '0')}`;
const at = (page, number, time) => clockAt(page, `${day(number)}T${time}:00Z`);

// It had gained since handover: that leaves room between the pace and the limit. Beside each weight: loss
// against handover (1040 g), against the peak (1090 g, the middle of the steady mornings), of one day.
const FROM_ABOVE = [
  [2, 1090],
  [3, 1092],
  [4, 1089],
  [5, 1091],
  [6, 1090],
  [7, 1074], // -3.3, 1.5, 1.5
  [8, 1055], // -1.4, 3.2, 1.8
  [9, 1034], // 0.6, 5.1, 2.0
  [10, 1012], // 2.7, 7.2, 2.1
  [11, 989], // 4.9, 9.3, 2.3
  [12, 966], // 7.1, 11.4, 2.3
  [13, 944], // 9.2, 13.4, 2.3
  [14, 922], // 11.3, 15.4, 2.3
];

// As heavy as at handover: loss against it, and of one day.
const FROM_HANDOVER = [
  [2, 1040],
  [3, 1042],
  [4, 1039],
  [5, 1041],
  [6, 1040],
  [7, 1024], // 1.5, 1.5
  [8, 1006], // 3.3, 1.8
  [9, 986], // 5.2, 2.0
  [10, 965], // 7.2, 2.1
  [11, 943], // 9.3, 2.3
  [12, 921], // 11.4, 2.3
  [13, 901], // 13.4, 2.2
  [14, 881], // 15.3, 2.2
];

// The lowest level that the limits of the handover weight alone ask for.
const leastLevel = (grams) => {
  const loss = ((HANDOVER - grams) / HANDOVER) * 100;
  return loss >= 15 ? 'vet' : loss >= 10 ? 'call' : loss >= 7 ? 'watch' : 'settled';
};

const home = async (bench, reference) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await at(page, 1, '22:00');
  await openApp(page, site);
  const script = new Script(2);
  script.added(`${day(1)}T09:00`, { reference });
  script.fed(`${day(1)}T14:05`, 'midday', 40).fed(`${day(1)}T21:05`, 'bedtime', 60);
  await takeIn(page, script);
  return { page, script };
};

const feeds = (script, number) =>
  script
    .fed(`${day(number)}T07:05`, 'morning', 60)
    .fed(`${day(number)}T14:05`, 'midday', 40)
    .fed(`${day(number)}T21:05`, 'bedtime', 60);

// The morning's weighing at a quarter to seven, through the screen once the weight falls.
const morning = async (page, script, number, grams) => {
  await at(page, number, '06:45');
  if (number <= 6) {
    script.weighed(`${day(number)}T06:45`, grams);
    await takeIn(page, script);
  } else {
    await takeIn(page, script);
    await weigh(page, grams);
    await page.locator('.weigh__kept', { hasText: String(grams) }).waitFor();
  }
  feeds(script, number);
  return lamp(page);
};

const callsOnScreen = (page) => page.locator('main a.call').evaluateAll((links) => links.map((link) => link.getAttribute('href')));

// One morning after the other; the levels seen, with what must hold on each of them.
const walk = async (page, script, mornings) => {
  const seen = new Map();
  let before = 'settled';
  for (const [number, grams] of mornings) {
    const { level, words } = await morning(page, script, number, grams);
    const what = `day ${number}, ${grams} g: ${words}`;
    if (number <= 6) {
      assert.equal(level, 'settled', what);
    }
    assert.ok(rank(level) >= rank(before), `no step back: ${what}`);
    assert.ok(rank(level) >= rank(leastLevel(grams)), `at least ${leastLevel(grams)}: ${what}`);
    const isCall = rank(level) >= rank('call');
    const calls = await callsOnScreen(page);
    assert.equal(calls.length > 0, isCall, what);
    assert.equal(await page.locator('.what-to-say').count(), isCall ? 1 : 0, what);
    if (isCall) {
      // The breeder first; from vet today on whoever answers before eight in the morning.
      assert.equal(calls[0], level === 'call' ? 'tel:+15550100' : 'tel:+15550102', what);
      await page.locator('.what-to-say summary').click();
      assert.match(await page.locator('.what-to-say__lines').innerText(), new RegExp(`${grams}\\sg`));
    }
    seen.set(number, level);
    before = level;
  }
  return seen;
};

test('a chick that had gained and falls by about 2 % a day: settled, watch, call, vet today', async ({ bench }) => {
  test.setTimeout(180_000);
  const { page, script } = await home(bench, { g10: HANDOVER * 10, day: '2026-10-12' });
  const seen = await walk(page, script, FROM_ABOVE);
  const climb = [...new Set(seen.values())];
  assert.deepEqual(climb, ['settled', 'watch', 'call', 'vet'], JSON.stringify([...seen]));
  // 15 % below the peak: vet today, on the last day only.
  assert.equal(seen.get(14), 'vet');
  // A call is asked for no later than the first morning 10 % below the peak.
  assert.ok(rank(seen.get(12)) >= rank('call'), JSON.stringify([...seen]));
  await shot(page, 'illness-vet');
  assert.deepEqual(await axe(page), []);
});

test('a chick at its handover weight that falls by about 2 % a day: a call before the limit is passed', async ({ bench }) => {
  test.setTimeout(180_000);
  const { page, script } = await home(bench, { g10: HANDOVER * 10, day: '2026-11-01' });
  const seen = await walk(page, script, FROM_HANDOVER);
  // 943 g is 9.3 % below handover, the last morning above the limit.
  assert.equal(seen.get(11), 'call', JSON.stringify([...seen]));
  assert.equal(seen.get(14), 'vet');
  await shot(page, 'illness-handover-vet');
});

test('dull on top of vet today is an emergency, and noted as gone it goes back down', async ({ bench }) => {
  test.setTimeout(120_000);
  const { page, script } = await home(bench, { g10: HANDOVER * 10, day: '2026-11-01' });
  for (const [number, grams] of FROM_HANDOVER) {
    script.weighed(`${day(number)}T06:45`, grams);
    feeds(script, number);
  }
  await at(page, 14, '22:00');
  await takeIn(page, script);
  const ill = await lamp(page);
  assert.equal(ill.level, 'vet', ill.words);

  await openSigns(page);
  const dull = page.getByRole('button', { name: 'Fluffed up and sleepy for over an hour, does not perk up for your voice or food (not a nap)' });
  await dull.click();
  await page.getByRole('button', { name: 'Note it in the journal' }).click();
  await page.locator('.status-line', { hasText: 'Fluffed up and sleepy' }).waitFor();
  const dulled = await lamp(page);
  assert.equal(dulled.level, 'emergency', dulled.words);
  assert.match(await page.locator('.lamp-band').innerText(), /Dull, and another reason for the vet/);
  const calls = await callsOnScreen(page);
  assert.equal(calls[0], 'tel:+15550102', 'the emergency vet first');
  await page.locator('.what-to-say summary').click();
  assert.match(await page.locator('.what-to-say__lines').innerText(), /dull/i);
  await shot(page, 'illness-emergency');
  assert.deepEqual(await axe(page), []);

  await openSigns(page);
  await dull.click();
  await page.getByRole('button', { name: 'It is gone' }).click();
  await page.locator('.status-line', { hasText: 'It is gone' }).waitFor();
  const cleared = await lamp(page);
  assert.equal(cleared.level, 'vet', cleared.words);
});
