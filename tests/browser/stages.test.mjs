// Where a chick is in its life and who holds this phone: home or not, handed over, removed, died.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { started } from './harness.mjs';
import { copied, countInSecond, eveningPhone, fillPlan, go, kept, openApp, openCard, openWholePlan, press, typeInChick, words } from './owner.mjs';

/** A phone that has just taken the card of another one's chick; `before` is done as the card lies open. */
const withCard = async (bench, before = async () => {}) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await typeInChick(breeder);
  await openCard(breeder);
  const card = await copied(breeder, 'Copy card as link');
  const owner = await eveningPhone(bench, site);
  await owner.goto(card);
  await started(owner);
  await before(owner);
  await press(owner, 'Take it');
  await owner.locator('.top-bar', { hasText: 'Ember' }).waitFor();
  return owner;
};

const settings = async (page, summary) => {
  await go(page, '#/settings');
  await page.locator('summary', { hasText: summary }).click();
};

test('after a card is taken the first thing asked is whether the chick is home', async ({ bench }) => {
  const owner = await withCard(bench);
  const question = owner.locator('[data-ask="home"]');
  await question.waitFor();
  const [asked, lamp] = await Promise.all([question, owner.locator('.lamp-band')].map((part) => part.boundingBox()));
  assert.ok(asked.y < lamp.y, 'it stands first');
  await press(owner, 'Yes, it is home');
  await question.waitFor({ state: 'detached' });
  await kept(owner);
  await owner.reload();
  await started(owner);
  await owner.locator('.lamp-band').waitFor();
  assert.equal(await owner.locator('[data-ask]').count(), 0);
});

test('on a slow phone the question stands there at once, not a minute later', async ({ bench }) => {
  const owner = await withCard(bench, (page) =>
    page.evaluate(() => {
      const now = Date.now.bind(Date);
      let reads = 0;
      Date.now = () => now() + 700 * (reads += 1);
    }),
  );
  await owner.locator('[data-ask="home"]').waitFor({ timeout: 5_000 });
});

test('a chick is removed by a spelled-out act, without Undo, and can be shown again', async ({ bench }) => {
  const owner = await withCard(bench);
  await settings(owner, 'Remove Ember from this phone');
  await press(owner, 'Yes, remove it from this phone');
  assert.match(await words(owner.locator('[data-life="removed"]')), /Removed chicks/);
  assert.equal(await owner.getByRole('button', { name: 'Undo' }).count(), 0);
  await owner.reload();
  await started(owner);
  assert.equal(await owner.locator('.top-bar').count(), 0, 'still removed');
  await go(owner, '#/settings');
  await press(owner, 'Show Ember again');
  await owner.locator('.top-bar', { hasText: 'Ember' }).waitFor();
});

test('a removed chick is erased from both copies only when its name is typed', async ({ bench }) => {
  const owner = await withCard(bench);
  await kept(owner);
  await settings(owner, 'Remove Ember from this phone');
  await press(owner, 'Yes, remove it from this phone');
  await owner.locator('summary', { hasText: 'Erase the whole record of Ember' }).click();
  await owner.locator('#erase-name').fill('Amber');
  await press(owner, 'Erase it for good');
  await owner.locator('.fault', { hasText: 'nothing was erased' }).waitFor();
  await owner.locator('#erase-name').fill('Ember');
  await press(owner, 'Erase it for good');
  await owner.locator('[data-life="removed"]').waitFor({ state: 'detached' });
  await owner.reload();
  await started(owner);
  const keys = await owner.evaluate(() => Object.keys(localStorage).filter((key) => /\/(entry|segment)\//.test(key)));
  assert.deepEqual(keys, []);
  assert.equal(await countInSecond(owner), 0);
});

test('an owner of a breeder\'s chick is asked whether she said so, and what could harm is only asked for', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await openWholePlan(breeder);
  await fillPlan(breeder);
  await breeder.locator('#is-breeder').check();
  await press(breeder, 'Start with these');
  await kept(breeder);
  await openCard(breeder);
  const card = await copied(breeder, 'Copy card as link');
  const owner = await eveningPhone(bench, site);
  await owner.goto(card);
  await started(owner);
  await press(owner, 'Take it');
  await owner.locator('.top-bar', { hasText: 'Ember' }).waitFor();
  await go(owner, '#/plan');
  await owner.locator('#volume-6').fill('70');
  await press(owner, 'Save the changes');
  const question = owner.locator('[data-ask="breeder"]');
  await question.waitFor();
  assert.match(await words(question), /Ask the breeder for it, or note what the breeder said by telephone.*more food than the breeder gave: Bedtime feed/s);
  assert.equal(await question.getByRole('radio').count(), 2);
  await question.getByRole('radio', { name: /^Not yet: ask first/ }).check();
  await press(owner, 'Save the changes');
  await owner.locator('main h1', { hasText: 'Chicks and settings' }).waitFor();
  await go(owner, '#/plan');
  assert.equal(await owner.locator('#volume-6').inputValue(), '60');
  assert.match(await words(owner.locator('main')), /Asked for: Bedtime feed/);
});

test('whoever hands a chick over stays its carer until it is answered, and then follows it', async ({ bench }) => {
  const owner = await withCard(bench);
  await press(owner, 'Yes, it is home');
  await settings(owner, 'Hand Ember to somebody');
  await owner.getByRole('radio', { name: 'its owner, for good' }).check();
  await press(owner, 'Note it');
  await owner.locator('[data-ask="left"]').waitFor();
  await owner.locator('.lamp-band').waitFor();
  await press(owner, 'No, it is somewhere else');
  const followed = owner.locator('[data-life="followed"]');
  await followed.waitFor();
  assert.equal(await owner.locator('.next-feed, .lamp-band, .small-acts').count(), 0);
  assert.equal(await followed.getByRole('link', { name: /^Call/ }).count(), 0);
});

test('a chick that died is said so once, and nothing is asked or counted down', async ({ bench }) => {
  const owner = await withCard(bench);
  await settings(owner, 'It died');
  await press(owner, 'Yes, note that Ember died');
  await owner.locator('[data-life="died"]').waitFor();
  assert.equal(await owner.locator('[data-ask], .next-feed, .lamp-band, .small-acts').count(), 0);
});
