// Every screen for everyone: axe in both themes, 320 px with 200 % text, target sizes, keyboard.
import assert from 'node:assert/strict';
import { axe, overflow, shot, test } from './harness.mjs';
import { go, kept, openApp, typeInChick, weigh } from './owner.mjs';

const SCREENS = ['now', 'weight', 'weaning', 'journal', 'handover', 'weigh', 'log', 'crop', 'droppings', 'solids', 'wrong', 'settings', 'plan', 'start', 'take-in', 'type-in', 'home', 'guide'];

const withDemo = async (bench, options) => {
  const site = await bench.site();
  const { page } = await bench.phone(site, options);
  await openApp(page, site);
  await page.getByRole('button', { name: 'Show me with a made-up chick' }).click();
  await page.locator('.next-feed').waitFor();
  return page;
};

for (const theme of ['dark', 'light']) {
  test(
    `axe finds nothing on any screen, ${theme}`,
    async (bench) => {
      const page = await withDemo(bench, { theme });
      for (const screen of SCREENS) {
        await go(page, `#/${screen}`);
        await shot(page, `${screen}-${theme}`);
        assert.deepEqual(await axe(page), [], screen);
      }
      await go(page, '#/wrong');
      await page.locator('.sign').first().click();
      await page.locator('.answer').waitFor();
      assert.deepEqual(await axe(page), [], 'the answer to a sign');
    },
    { timeoutMs: 240_000 },
  );

  test(`axe finds nothing on the first start and under an alarm, ${theme}`, async (bench) => {
    const site = await bench.site();
    const { page } = await bench.phone(site, { theme });
    await openApp(page, site);
    assert.deepEqual(await axe(page), [], 'first start');
    await typeInChick(page);
    await weigh(page, 830);
    const sure = page.getByRole('button', { name: 'Yes, that is what the scale says' });
    await sure.click();
    await kept(page);
    await go(page, '#/now');
    await page.locator('.lamp-band[data-level="emergency"]').waitFor();
    await shot(page, `alarm-${theme}`);
    assert.deepEqual(await axe(page), [], 'alarm');
  });
}

test(
  'no screen scrolls sideways at 320 px with text at 200 %',
  async (bench) => {
    const page = await withDemo(bench, { viewport: { width: 320, height: 640 } });
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('html { font-size: 200%; }');
      document.adoptedStyleSheets = [sheet];
    });
    for (const screen of SCREENS) {
      await go(page, `#/${screen}`);
      await shot(page, `${screen}-320-200`);
      assert.equal(await overflow(page), 0, screen);
    }
  },
  { timeoutMs: 120_000 },
);

test('everything that is pressed is at least 48 px high', async (bench) => {
  const page = await withDemo(bench);
  for (const screen of SCREENS) {
    await go(page, `#/${screen}`);
    const small = await page.evaluate(() => {
      const pressed = [...document.querySelectorAll('a[href], button, summary, select, input:not([type=radio]):not([type=checkbox]), label.choice__option')];
      const seen = pressed.filter((element) => element.offsetParent !== null && !element.closest('p'));
      return seen.filter((element) => element.getBoundingClientRect().height < 47.5).map((element) => element.outerHTML.slice(0, 120));
    });
    assert.deepEqual(small, [], screen);
  }
});

test('a weight and a bedtime feed are noted with the keyboard alone', async (bench) => {
  const page = await withDemo(bench);
  const tabTo = async (role, name) => {
    for (let presses = 0; presses < 80; presses += 1) {
      await page.keyboard.press('Tab');
      const found = await page.evaluate(() => {
        const element = document.activeElement;
        return { text: (element.innerText || element.getAttribute('aria-label') || element.id || '').trim(), tag: element.tagName };
      });
      if (found.text === name) {
        return;
      }
    }
    assert.fail(`${role} ${name} is not reached by Tab`);
  };
  await tabTo('link', 'Log it');
  await page.keyboard.press('Enter');
  await page.locator('#taken').waitFor();
  await tabTo('button', 'Done');
  await page.keyboard.press('Enter');
  await page.locator('.status-line', { hasText: 'feed' }).waitFor();
  await tabTo('link', 'Weigh');
  await page.keyboard.press('Enter');
  await tabTo('field', 'weight');
  await page.keyboard.type('1011');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  await page.locator('.table', { hasText: '1011' }).waitFor();
});
