// Bad input gets a sentence at its field; the typed text stays and nothing else changes.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { clock } from './harness.mjs';
import { fillPlan, go, hasFault, journalWords, kept, openApp, openWholePlan, typeInChick } from './owner.mjs';

const open = async (bench) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, '2026-11-24T20:50:00Z');
  await openApp(page, site);
  return page;
};

test('weights that are none are refused one by one, and the text stays', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  await kept(page);
  const cases = [
    ['', /Type a number/],
    ['abc', /digits only/],
    ['-5', /below zero/],
    ['0', /5 to 3000 g/],
    ['1.0,5', /point or a comma/],
    ['99999999', /number from 0 to|digits only/],
  ];
  for (const [text, words] of cases) {
    await go(page, '#/now');
    await go(page, '#/weigh');
    await page.locator('#weight').fill(text);
    await page.getByRole('radio', { name: 'empty', exact: true }).check();
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    const anyway = page.getByRole('button', { name: 'Yes, that is what the scale says' });
    if (await anyway.isVisible()) {
      await anyway.click();
    }
    await hasFault(page, words);
    assert.equal(await page.locator('#weight').inputValue(), text);
  }
  assert.equal((await journalWords(page)).length, 1);
});

test('a feed with no number, in the future or before the hatch day is refused', async ({ bench }) => {
  const page = await open(bench);
  await typeInChick(page);
  const attempt = async (fields, words) => {
    await go(page, '#/now');
    await go(page, '#/log');
    await page.locator('details.when summary').first().click();
    for (const [id, text] of Object.entries(fields)) {
      await page.locator(`#${id}`).fill(text);
    }
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await hasFault(page, words);
    for (const [id, text] of Object.entries(fields)) {
      assert.equal(await page.locator(`#${id}`).inputValue(), text);
    }
  };
  await attempt({ taken: '' }, /Type a number/);
  await attempt({ taken: 'sixty' }, /digits only/);
  await attempt({ taken: '-60' }, /below zero/);
  await attempt({ taken: '600' }, /300 ml/);
  await attempt({ 'when-day': '2026-11-25' }, /in the future/);
  await attempt({ 'when-day': '2026-08-01' }, /before the chick hatched/);
  await attempt({ 'when-day': '' }, /Choose a day/);
  await attempt({ 'when-time': '' }, /Type a time of day/);
  assert.equal((await journalWords(page)).length, 1);
});

// From the foot of a form that is many screens long.
test('the first field at fault takes the focus, with its label and its sentence in view', async ({ bench }) => {
  const page = await open(bench);
  await openWholePlan(page);
  await fillPlan(page);
  const sendOff = async () => {
    await page.getByRole('button', { name: 'Start with these' }).click();
    await page.locator('.fault:not(:empty)').first().waitFor();
  };
  const inView = async (locator) => {
    await page.waitForFunction((element) => {
      const { top, bottom } = element.getBoundingClientRect();
      const frame = document.querySelector('main').getBoundingClientRect();
      return top >= frame.top && bottom <= frame.bottom;
    }, await locator.elementHandle());
  };
  await page.locator('#handover-weight').fill('heavy');
  await page.locator('#volume-3').fill('some');
  await sendOff();
  await page.locator('#handover-weight:focus').waitFor();
  await inView(page.locator('label[for="handover-weight"]'));
  await inView(page.locator('#handover-weight-fault'));
  await page.locator('#handover-weight').fill('1040');
  await sendOff();
  await page.locator('#volume-3:focus').waitFor();
  // One of a few without an answer.
  await page.locator('#volume-3').fill('40');
  await page.getByRole('button', { name: 'Start with these' }).click();
  await page.locator('.next-feed').waitFor();
  await go(page, '#/weigh');
  await page.locator('#weight').fill('1012');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.locator('input[name="crop"]:focus').first().waitFor();
});

test('a plan with holes and slips says what is wrong at each field', async ({ bench }) => {
  const page = await open(bench);
  await openWholePlan(page);
  await page.getByRole('button', { name: 'Start with these' }).click();
  for (const words of [/Choose the species/, /a name/, /at least one feed/]) {
    await hasFault(page, words);
  }
  await fillPlan(page);
  await page.locator('#breeder-number').fill('ring me');
  await page.locator('#hatched').fill('2026-12-24');
  await page.locator('#handover-weight').fill('104000');
  await page.locator('#volume-2').fill('lots');
  await page.getByRole('button', { name: 'Start with these' }).click();
  for (const words of [/digits only/, /in the future/, /number from 0 to 20|5 to 3000 g/]) {
    await hasFault(page, words);
  }
  assert.equal(await page.locator('#breeder-number').inputValue(), 'ring me');
  assert.equal(await page.locator('.top-bar').count(), 0, 'no chick was added');
});

test('feeds out of order are refused with a sentence', async ({ bench }) => {
  const page = await open(bench);
  await openWholePlan(page);
  await fillPlan(page);
  await page.locator('#time-2').fill('15:00');
  await page.getByRole('button', { name: 'Start with these' }).click();
  await hasFault(page, /follow each other/);
});

test('a pasted text that is no card changes nothing', async ({ bench }) => {
  const page = await open(bench);
  await go(page, '#/take-in');
  for (const text of ['hello', '{"v":1}', '{"v":99,"entries":[]}', '['.repeat(5000), '<script>alert(1)</script>']) {
    await page.locator('#paste').fill(text);
    await page.getByRole('button', { name: 'Next' }).click();
    await hasFault(page, /Nothing was changed/);
    assert.equal(await page.locator('#paste').inputValue(), text);
  }
  await page.locator('#paste').fill('');
  await page.getByRole('button', { name: 'Next' }).click();
  await hasFault(page, /Write something/);
});
