// Windows of other shapes than a telephone held upright: two columns where there is room, and a telephone on
// its side, on which what is pressed is never below the edge.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, overflow, shot } from './harness.mjs';
import { go, logNextFeed } from './owner.mjs';
import { STATES, walk, withLosingChick } from './states.mjs';

const LANDSCAPE = { width: 800, height: 360 };

// Who holds the phone is answered once, so that what is due stands on the first screen.
const answered = async (page) => {
  await go(page, '#/now');
  await page.locator('.question button').first().click();
};

// Screens with something to press first; what is pressed on them.
const PRESSED = {
  now: '.dock .button--main',
  weigh: '.dock .button--main',
  log: '.dock .button--main',
  'log-of-one-feed': '.dock .button--main',
  crop: '.dock .button--main',
  droppings: '.dock .button--main',
  solids: '.dock .button--main',
  plan: '.dock .button--main',
  'whole-plan': '.dock .button--main',
  'my-details': '.dock .button--main',
  wrong: '.call',
  'sign-answered': '.call',
  'group-who': '.dock .button--main',
  'group-hatched': '.dock .button--main',
  'group-fed': '.dock .button--main',
  'group-weight': '.dock .button--main',
  'group-call': '.dock .button--main',
  'guide-crop': '.crop-card, .guide__stop',
  'guide-mix': '.guide__next, .guide__stop',
  'guide-warmth': '.dock .button--main, .guide__stop',
  'guide-warm': '.guide__next, .guide__stop',
  'guide-draw': '.guide__next, .guide__stop',
  'guide-hold': '.guide__next, .guide__stop',
  'guide-response': '.guide__next, .guide__stop',
  'guide-give': '.guide__next, .guide__stop',
  'guide-after': '.guide__next, .guide__stop',
  alarm: '.dock .call',
};

// What of these cannot be pressed where the page stands: outside the window or under something else.
const outOfReach = (page, places) =>
  page.locator(places).evaluateAll((all) => {
    const seen = all.filter((element) => element.checkVisibility());
    const missed = seen.filter((element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect();
      const corners = [
        [left + 12, top + 12],
        [right - 12, bottom - 12],
      ];
      return corners.some(([x, y]) => !element.contains(document.elementFromPoint(x, y)));
    });
    return seen.length === 0 ? ['nothing to press'] : missed.map((element) => element.textContent.trim());
  });

test('on a telephone that lies on its side what is to be pressed is in reach without a scroll', async ({ bench }) => {
  test.setTimeout(180_000);
  const page = await withLosingChick(bench, { viewport: LANDSCAPE });
  await answered(page);
  const met = [];
  await walk(page, STATES, async (name) => {
    assert.equal(await overflow(page), 0, name);
    const places = PRESSED[name];
    if (places !== undefined) {
      met.push(name);
      await shot(page, `${name}-800x360`);
      assert.deepEqual(await outOfReach(page, places), [], name);
    }
  });
  assert.deepEqual(met.sort(), Object.keys(PRESSED).sort());
});

// The columns that what can be focused stands in, in the order of the keyboard.
const columnsInOrder = (page) =>
  page.locator('main .columns').evaluate((columns) => {
    const [left] = columns.children;
    const middle = left.getBoundingClientRect().right;
    const focused = [...columns.querySelectorAll('a[href], button, input, select, textarea, summary')];
    const seen = focused.filter((element) => element.checkVisibility());
    return seen.map((element) => (element.getBoundingClientRect().left < middle ? 'left' : 'right'));
  });

for (const theme of ['dark', 'light']) {
  test(`from 700 px on two columns, read and tabbed through in their order, ${theme}`, async ({ bench }) => {
    test.setTimeout(120_000);
    const page = await withLosingChick(bench, { theme, viewport: { width: 768, height: 1024 } });
    await answered(page);
    for (const width of [700, 768, 1440]) {
      await page.setViewportSize({ width, height: 1024 });
      for (const screen of ['weight', 'wrong', 'settings', 'handover']) {
        await go(page, `#/${screen}`);
        await page.locator('main .columns').waitFor();
        await shot(page, `${screen}-${width}-${theme}`);
        const columns = await columnsInOrder(page);
        assert.deepEqual(columns, columns.toSorted(), `${screen}, ${width}`);
        assert.ok(columns.includes('left') && columns.includes('right'), `${screen}, ${width}: ${columns}`);
        assert.equal(await overflow(page), 0, `${screen}, ${width}`);
        assert.deepEqual(await axe(page), [], `${screen}, ${width}`);
      }
      await go(page, '#/journal');
      const opened = page.locator('.unfold[open]');
      assert.equal(await opened.count(), 1, 'the newest line is opened');
      await page.locator('.unfold > summary').nth(3).click();
      assert.equal(await opened.count(), 1, 'one line is opened at a time');
      const [row, facts] = await Promise.all([opened.locator('summary').boundingBox(), opened.locator('.unfold__more').boundingBox()]);
      assert.ok(row.x + row.width <= facts.x + 1 && Math.abs(row.y - facts.y) <= 1, 'its facts stand beside it');
      await shot(page, `journal-${width}-${theme}`);
      assert.equal(await overflow(page), 0, `journal, ${width}`);
      assert.deepEqual(await axe(page), [], `journal, ${width}`);
      await go(page, '#/chicks');
      await page.locator('.chosen .chart').waitFor();
      await shot(page, `chicks-${width}-${theme}`);
      assert.equal(await overflow(page), 0, `chicks, ${width}`);
      assert.deepEqual(await axe(page), [], `chicks, ${width}`);
    }
    await page.setViewportSize({ width: 699, height: 1024 });
    await go(page, '#/settings');
    const display = await page.locator('main .columns').evaluate((columns) => getComputedStyle(columns).display);
    assert.equal(display, 'contents', 'one column below that');
  });
}

for (const viewport of [{ width: 360, height: 740 }, { width: 320, height: 640 }, { width: 768, height: 1024 }, LANDSCAPE]) {
  test(`a notice covers nothing that is pressed and goes by itself, ${viewport.width} x ${viewport.height}`, async ({ bench }) => {
    const page = await withLosingChick(bench, { viewport });
    await answered(page);
    await go(page, '#/now');
    const dock = page.locator('.dock').first();
    const notice = page.locator('.status-line[data-shown="true"]');
    const places = async () => {
      const [told, pressed] = await Promise.all([notice.boundingBox(), dock.boundingBox()]);
      const apart = told.x + told.width <= pressed.x || told.y + told.height <= pressed.y + 0.5 || pressed.x + pressed.width <= told.x;
      assert.ok(apart, JSON.stringify({ told, pressed }));
    };
    await logNextFeed(page);
    await notice.waitFor();
    await shot(page, `notice-${viewport.width}`);
    await places();
    const bar = await page.locator('.bottom-bar').boundingBox();
    const told = await notice.boundingBox();
    assert.ok(told.y + told.height <= bar.y, 'nor the places');
    await page.clock.fastForward('00:11');
    await notice.waitFor({ state: 'detached' });
    await go(page, '#/droppings');
    await page.locator('.look').first().click();
    await dock.locator('.button--main').click();
    await notice.waitFor();
    await places();
    await go(page, '#/weight');
    await notice.waitFor({ state: 'detached' });
  });
}
