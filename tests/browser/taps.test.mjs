// A tap comes from one button: it must still be there, and the same, when the finger goes up.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { clock } from './harness.mjs';
import { go, kept, openApp, typeInChick, words } from './owner.mjs';
import { STATES, walk, withLosingChick } from './states.mjs';

// Types one more character into each field and takes it away again; tells what it is that another button came in place of.
const replacedByTyping = async () => {
  const isShown = (element) => element.checkVisibility();
  const fields = [...document.querySelectorAll('main :is(input:not([type=radio], [type=checkbox], [type=file]), textarea)')];
  const buttons = [...document.querySelectorAll('main :is(button[type=submit], .dock :is(button, a))')].filter(isShown);
  const replaced = [];
  for (const field of fields.filter(isShown)) {
    const typed = field.value;
    for (const text of [`${typed}1`, typed]) {
      field.value = text;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      await new Promise((done) => setTimeout(done));
      replaced.push(...buttons.filter((button) => !button.isConnected).map((button) => `${button.innerText} by #${field.id}`));
    }
  }
  return { replaced, tried: buttons.length > 0 ? fields.length : 0 };
};

test('no key takes the button away that is pressed next, on any screen in any state', async ({ bench }) => {
  test.setTimeout(240_000);
  const page = await withLosingChick(bench);
  let all = 0;
  await walk(page, STATES, async (name) => {
    const { replaced, tried } = await page.evaluate(replacedByTyping);
    assert.deepEqual(replaced, [], name);
    all += tried;
  });
  assert.ok(all > 50, `${all} fields beside a button`);
});

test('a minute that passes while the finger is down takes no tap away', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, '2026-11-24T18:30:00Z');
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  await go(page, '#/now');
  await page.clock.pauseAt('2026-11-24T18:49:59Z');
  // Before its time a feed is asked about.
  const feed = page.getByRole('button', { name: 'Feed now' });
  const { x, y, width, height } = await feed.boundingBox();
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.clock.runFor(1_100);
  await page.mouse.up();
  await page.locator('.dock [role="alert"]').waitFor();

  // The hour goes on for who keeps a finger on the glass.
  await go(page, '#/weigh');
  const hour = page.locator('.when--chip summary');
  await page.clock.runFor(3_000);
  assert.match(await words(hour), /18:50/);
  await page.mouse.down();
  await page.clock.runFor(61_000);
  assert.match(await words(hour), /18:51/);
  await page.mouse.up();
});
