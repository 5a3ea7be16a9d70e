// What comes as a report of a chick that a phone does not know: who holds this phone? Two carers, a phone that was
// lost, a grandparent. No server: what one phone knows reaches another by a link.
import assert from 'node:assert/strict';
import { ASPIRATION, noteSign } from './frightened.mjs';
import { test } from './fixtures.mjs';
import { shot, started } from './harness.mjs';
import { copied, eveningPhone, go, journalWords, kept, logNextFeed, openApp, plain, press, typeInChick, weigh, words } from './owner.mjs';

const isCalled = async (page, name) => {
  await go(page, '#/settings');
  await page.locator('#carer').fill(name);
};

// The first carer's phone with a chick, a weight and a feed; and the link to all of it.
const first = async (bench) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await isCalled(page, 'Olive');
  await weigh(page, 1031);
  await go(page, '#/now');
  await logNextFeed(page);
  await kept(page);
  await go(page, '#/handover');
  return { site, page, link: await copied(page, 'Copy report as link') };
};

const takesIn = async (page, link) => {
  await page.goto(link);
  await started(page);
  await press(page, 'Import');
  await page.locator('.top-bar', { hasText: 'Ember' }).waitFor();
};

const question = (page) => page.locator('section[data-ask="role"]');

test('a second carer says so with a name, both phones count down, and who did what is shown', async ({ bench }) => {
  const { site, page: olive, link } = await first(bench);
  const ben = await eveningPhone(bench, site);
  await takesIn(ben, link);
  await question(ben).waitFor();
  await shot(ben, 'role-asked');
  // Until it is answered the phone counts down as a carer's.
  await ben.locator('.next-feed').first().waitFor();
  await question(ben).locator('#role-name').fill('Ben');
  await press(ben, 'We both care for it');
  await question(ben).waitFor({ state: 'detached' });
  await ben.locator('.next-feed').first().waitFor();
  await ben.clock.fastForward(13 * 3_600_000);
  await weigh(ben, 1029);
  await kept(ben);
  await go(ben, '#/handover');
  const carers = ben.locator('#two-carers');
  await carers.locator('summary').click();
  await shot(ben, 'two-carers');
  const said = await words(carers);
  assert.match(said, /Olive: 1 feed, 1 weight/);
  assert.match(said, /Ben: 1 weight/);
  const back = await copied(ben, 'Copy everything for the other phone');
  await olive.clock.fastForward(13 * 3_600_000);
  await go(olive, '#/take-in');
  await olive.locator('#paste').fill(back);
  await press(olive, 'Next');
  await press(olive, 'Import');
  assert.equal(await question(olive).count(), 0, 'her own chick is no question');
  const lines = await journalWords(olive);
  assert.ok(lines.some((line) => plain(line).includes('1029 g')), lines.join('\n'));
});

test('whoever opens it while a vet is to be called reads that first, and the question about the phone below', async ({ bench }) => {
  const { site, page: olive } = await first(bench);
  await noteSign(olive, ASPIRATION, 'two-carers');
  await kept(olive);
  await go(olive, '#/handover');
  const link = await copied(olive, 'Copy report as link');
  const ben = await eveningPhone(bench, site);
  await takesIn(ben, link);
  // His clock is not behind what she noted.
  await ben.clock.fastForward(60_000);
  await ben.locator('.lamp-band[data-level="emergency"]').waitFor();
  const top = async (part) => (await part.boundingBox()).y;
  await shot(ben, 'role-asked-below-a-call');
  assert.ok((await top(ben.locator('.lamp-band').first())) < (await top(question(ben))));
});

test('a lost phone: the breeder sends back what the reports hold, and the owner goes on as its carer', async ({ bench }) => {
  const { site, link } = await first(bench);
  const breeder = await eveningPhone(bench, site);
  await takesIn(breeder, link);
  await press(breeder, 'I follow it: reports only');
  await breeder.locator('[data-life="followed"]').waitFor();
  assert.equal(await breeder.locator('.next-feed').count(), 0, 'nothing to feed here');
  await go(breeder, '#/handover');
  const back = await copied(breeder, 'Copy report as link');

  const anew = await eveningPhone(bench, site);
  await takesIn(anew, back);
  await question(anew).waitFor();
  await press(anew, 'It is mine: this phone is new');
  await question(anew).waitFor({ state: 'detached' });
  await anew.locator('.next-feed').first().waitFor();
  await go(anew, '#/settings');
  assert.equal(await anew.locator('#carer').inputValue(), 'Olive', 'the name that noted before');
  const lines = (await journalWords(anew)).map(plain);
  for (const noted of [/1031 g/, /Bedtime feed/]) {
    assert.ok(lines.some((line) => noted.test(line)), `${noted} in ${lines.join('\n')}`);
  }
});
