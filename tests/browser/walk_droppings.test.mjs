// An owner looks at the paper at bedtime: what is asked, what is counted, and what the top of Now says then.
//
// Beside each check stands what it comes from, the trade's levels: W watch, B the breeder, V a vet today.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { BREEDER, NIGHT_VET, at, day, feedsNowhere, now, owner, picture, quietDays } from './frightened.mjs';
import { go, plain, press } from './owner.mjs';

// Quiet days whose papers were counted on the last three, 18, 22 and 20: a median of 20; all of the tenth day's
// feeds are in.
const countedDays = () => {
  const script = quietDays();
  [18, 22, 20].forEach((count, index) => script.note(`${day(index + 7)}T21:10`, 'droppings-counted', { paper: 'day', count }));
  script.note(`${day(3)}T10:00`, 'vet-seen');
  script.weighed(`${day(10)}T06:45`, 1041).note(`${day(10)}T06:50`, 'crop-seen', { state: 'flat', feel: 'soft' });
  return script.fed(`${day(10)}T07:05`, 'morning', 60).fed(`${day(10)}T14:05`, 'midday', 40).fed(`${day(10)}T21:05`, 'bedtime', 60);
};

const RED_FOOD = /Was red food eaten in the last 24 h/;

const look = async (page, name) => {
  await go(page, '#/droppings');
  await page.getByRole('radio', { name, exact: true }).check();
};

const count = async (page, number) => {
  await go(page, '#/droppings');
  await page.locator('#count').fill(String(number));
  await press(page, 'Keep');
  await page.locator('.status-line', { hasText: `Droppings: ${number} (the day's paper)` }).waitFor();
};

test('red at night without red food, and fewer than half: the vet, who is asked before any feed', async ({ bench }) => {
  const page = await owner(bench, countedDays(), 10, '22:30');
  await look(page, 'as usual');
  const question = page.getByRole('group', { name: RED_FOOD });
  assert.equal(await question.count(), 0, 'only red asks for red food');
  await look(page, 'red');
  await question.getByRole('radio', { name: 'not sure' }).check();
  assert.match(plain(await page.locator('main').innerText()), /Without a yes it counts as blood\./);
  await page.locator('#count').fill('9');
  await picture(page, 'red-question');
  // At 22:30 the day's paper is meant.
  assert.ok(await page.getByRole('radio', { name: "the day's paper" }).isChecked());
  await press(page, 'Keep');
  await page.locator('.status-line', { hasText: "Droppings: 9 (the day's paper)" }).waitFor();
  // Part 5: red that food does not explain: V; half of its own count or less: B (9 of 20 are 45 %).
  const seen = await now(page, 'red-at-night');
  assert.equal(seen.level, 'vet', seen.words);
  assert.equal(seen.calls[0], NIGHT_VET);
  assert.match(seen.title, /^Ask the vet before any feed\./);
  assert.match(seen.words, /Blood in the droppings/);
  // The rest stands under "More".
  const all = async () => plain(await page.locator('main').evaluate((main) => main.textContent));
  const few = /Only 45\s% of its usual number of droppings in a day \(limit 50\s%\)/;
  assert.match(await all(), few);
  await feedsNowhere(page);
  // Look and count are one act: with 30 more it is 39, and Undo takes both back.
  await look(page, 'as usual');
  await page.locator('#count').fill('30');
  await press(page, 'Keep');
  await page.locator('.lamp-band').waitFor();
  assert.doesNotMatch(await all(), few);
  await press(page, 'Undo');
  await page.locator('.status-line', { hasText: 'Taken back' }).waitFor();
  assert.match(await all(), few);
});

test('red after beetroot is watched, and it is fed', async ({ bench }) => {
  const page = await owner(bench, countedDays(), 10, '22:30');
  await look(page, 'red');
  await page.getByRole('group', { name: RED_FOOD }).getByRole('radio', { name: 'Yes', exact: true }).check();
  await press(page, 'Keep');
  // Part 5: food explains: W.
  const seen = await now(page, 'red-food');
  assert.equal(seen.level, 'watch', seen.words);
  assert.match(seen.words, /Droppings red after red food/);
  assert.ok(!seen.held, seen.words);
});

test('half of its usual number calls the breeder, one more does not, and a new count says so', async ({ bench }) => {
  const page = await owner(bench, countedDays(), 10, '22:30');
  await count(page, 10);
  // Part 5: half of its own count: B; 10 of 20.
  const half = await now(page, 'half');
  assert.equal(half.level, 'call', half.words);
  assert.equal(half.calls[0], BREEDER);
  assert.match(half.words, /Only 50\s% of its usual number of droppings in a day/);
  assert.ok(!half.held, half.words);
  // Another paper of the same day, found later.
  await count(page, 1);
  const more = await now(page, 'more-than-half');
  assert.equal(more.level, 'settled', more.words);
  // No whole number of droppings: nothing is kept.
  await go(page, '#/droppings');
  await page.locator('#count').fill('1.5');
  await press(page, 'Keep');
  await page.locator('#count-fault', { hasText: 'whole number' }).waitFor();
});

test('liquid stool is watched, after more than 12 hours it is for the vet, and it is fed meanwhile', async ({ bench }) => {
  const page = await owner(bench, countedDays().droppings(`${day(10)}T10:00`, 'liquid-stool'), 10, '22:00');
  const first = await now(page, 'liquid');
  assert.equal(first.level, 'watch', first.words);
  assert.match(first.words, /Stool liquid, without form/);
  assert.ok(!first.held, first.words);
  await at(page, 10, '22:01');
  await look(page, 'stool itself liquid, without form (diarrhoea)');
  await press(page, 'Keep');
  // Part 5: the stool itself liquid for more than 12 h: V. It eats, and should.
  const later = await now(page, 'liquid-12h');
  assert.equal(later.level, 'vet', later.words);
  assert.equal(later.calls[0], NIGHT_VET);
  assert.ok(!later.held, later.words);
});

test('the page of numbers names the rule with its limits', async ({ bench }) => {
  const page = await owner(bench, countedDays(), 10, '22:30');
  await go(page, '#/sources');
  const words = plain(await page.locator('[data-rule="few-droppings"]').innerText());
  assert.match(words, /Few droppings in a day/);
  assert.match(words, /At 0\.5\s× its own usual number in a day, or less: call the breeder, once 3 days were counted\./);
});
