// The bedtime feed, a weighing and the alarm without a finger on the glass: each press of a key with where
// the focus is afterwards.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { clock } from './harness.mjs';
import { go, kept, openApp, typeInChick } from './owner.mjs';

// Ten minutes before the bedtime feed.
const withChick = async (bench) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, '2026-11-24T20:50:00Z');
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  await go(page, '#/weaning');
  await go(page, '#/now');
  return page;
};

// What has the focus: its own words, its label or its group and place in it.
const focused = (page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (element === document.body) {
      return 'nothing';
    }
    const labels = [...(element.labels ?? [])].map((label) => label.innerText);
    const legend = element.type === 'radio' ? [element.closest('fieldset').querySelector('legend').innerText] : [];
    const words = element.getAttribute('aria-label') ?? (labels.length > 0 ? labels.join(' ') : element.innerText);
    // The mark before the alarm's words is a picture made of a letter.
    return [...legend, words].join(': ').replace(/\s+/g, ' ').replace(/^! /, '').trim();
  });

// Only what can be seen may have the focus, with a ring that can be seen (WCAG 2.2, 2.4.7 and 2.4.11).
const assertSeen = async (page, name) => {
  const { isRinged, isUncovered } = await page.evaluate(() => {
    const element = document.activeElement;
    // A heading takes the focus to be read out; nothing can be done with it.
    if (element.matches('h1')) {
      return { isRinged: true, isUncovered: true };
    }
    const marked = element.type === 'radio' ? element.closest('label') : element;
    const ringed = [element, marked].some((part) => {
      const { outlineStyle, outlineWidth } = getComputedStyle(part);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
    });
    const { left, top, width, height } = marked.getBoundingClientRect();
    const places = [[0.5, 0.5], [0.1, 0.5], [0.9, 0.5], [0.5, 0.1], [0.5, 0.9]];
    const isMine = ([x, y]) => marked.contains(document.elementFromPoint(left + width * x, top + height * y));
    return { isRinged: ringed, isUncovered: places.some(isMine) };
  });
  assert.ok(isRinged, `no ring around ${name}`);
  assert.ok(isUncovered, `${name} has the focus and is covered`);
};

const press = async (page, key, name) => {
  await page.keyboard.press(key);
  await assert.doesNotReject(
    async () => {
      const end = Date.now() + 3_000;
      while ((await focused(page)) !== name) {
        if (Date.now() > end) {
          throw new Error(`after ${key} the focus is on "${await focused(page)}" and not on "${name}"`);
        }
      }
    },
    `focus after ${key}`,
  );
  await assertSeen(page, name);
};

const presses = async (page, steps) => {
  for (const [key, name] of steps) {
    await press(page, key, name);
  }
};

// From the heading of the first screen on; how many stops there are depends on what the day asks for.
const tabTo = async (page, name) => {
  for (let count = 0; count < 40; count += 1) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    assert.notEqual(now, '', 'everything on the way has a name');
    if (now === name) {
      await assertSeen(page, name);
      return;
    }
  }
  assert.fail(`${name} is not reached by Tab`);
};

test('the bedtime feed is noted with the keyboard alone, and taken back', async ({ bench }) => {
  const page = await withChick(bench);
  assert.equal(await focused(page), 'Now');
  await tabTo(page, 'Other amount');
  await presses(page, [
    ['Enter', 'Log a feed'],
    ['Tab', 'Taken'],
    ['Tab', 'When: now'],
    ['Tab', 'Counts as: Bedtime feed, 21:00'],
    ['Tab', 'Temperature, and how it ate'],
    ['Tab', 'Leave this feed out'],
    ['Tab', 'It refused'],
    ['Tab', 'Done'],
    ['Shift+Tab', 'It refused'],
    ['Tab', 'Done'],
    ['Enter', 'Now'],
  ]);
  await page.locator('.status-line', { hasText: /Bedtime feed, 60\sml\. Kept\./ }).waitFor();
  assert.match(await page.locator('.next-feed').innerText(), /Morning feed/);
  await press(page, 'Shift+Tab', 'Close');
  await press(page, 'Shift+Tab', 'Undo');
  await page.keyboard.press('Enter');
  await page.locator('.status-line', { hasText: 'Taken back' }).waitFor();
  assert.match(await page.locator('.next-feed').innerText(), /Bedtime feed/);
  assert.notEqual(await focused(page), 'nothing', 'the focus is still somewhere after Undo');
});

test('a fault leads the keyboard to its field, and the corrected feed is noted', async ({ bench }) => {
  const page = await withChick(bench);
  await tabTo(page, 'Other amount');
  await presses(page, [
    ['Enter', 'Log a feed'],
    ['Tab', 'Taken'],
  ]);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('a lot');
  await press(page, 'Enter', 'Taken');
  await page.locator('#taken[aria-invalid="true"]').waitFor();
  const described = await page.locator('#taken').getAttribute('aria-describedby');
  assert.match(await page.locator(`#${described}`).innerText(), /digits only/);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('45,5');
  await press(page, 'Enter', 'Now');
  await page.locator('.status-line', { hasText: /Bedtime feed, 45\.5\sml/ }).waitFor();
});

test('a weighing is noted with the keyboard alone, its fault and its question too', async ({ bench }) => {
  const page = await withChick(bench);
  await tabTo(page, 'Weigh');
  await presses(page, [
    ['Enter', 'Weigh'],
    ['Tab', 'When: now, 20:50'],
    ['Tab', 'Weight'],
  ]);
  await page.keyboard.type('10120');
  await press(page, 'Enter', 'Crop: empty');
  await page.locator('.choice .fault', { hasText: /./ }).waitFor();
  await press(page, 'Space', 'Crop: empty');
  await press(page, 'ArrowDown', 'Crop: after feed');
  await press(page, 'ArrowUp', 'Crop: empty');
  await press(page, 'Enter', 'Crop: empty');
  await page.locator('.question[role="alert"]').waitFor();
  await presses(page, [
    ['Tab', 'I meant 1012 g'],
    ['Tab', 'Yes, that is what the scale says'],
    ['Shift+Tab', 'I meant 1012 g'],
  ]);
  await page.keyboard.press('Enter');
  await page.locator('.question').waitFor({ state: 'detached' });
  assert.equal(await page.locator('#weight').inputValue(), '1012');
  // The question is gone and with it the button; the way goes on at Keep, which stands next.
  await press(page, 'Tab', 'Keep');
  await press(page, 'Enter', 'Weigh');
  await page.locator('.weigh__kept', { hasText: /1012\s+g/ }).waitFor();
  await kept(page);
});

test('the alarm is reached, answered and noted with the keyboard alone', async ({ bench }) => {
  const page = await withChick(bench);
  await press(page, 'Shift+Tab', 'Help');
  await page.keyboard.press('Enter');
  // The screen that the link leads to bears its name.
  await page.locator('h1:focus', { hasText: 'Help' }).waitFor();
  await tabTo(page, 'Cold');
  await page.keyboard.press('Enter');
  await page.locator('.answer[data-level="emergency"] h2:focus').waitFor();
  assert.equal(await focused(page), 'Emergency');
  // What to say, the journal; the calls stand last, where the thumb is.
  await presses(page, [
    ['Tab', 'Note it in the journal'],
    ['Enter', 'Note it in the journal'],
  ]);
  await page.locator('.status-line', { hasText: 'Kept.' }).waitFor();
  await presses(page, [
    ['Tab', 'It is gone'],
    ['Tab', 'What to say'],
    ['Enter', 'What to say'],
    ['Tab', 'Copy'],
  ]);
  // The plan knows no vet: the way to note one stands before the one number there is.
  await tabTo(page, 'Add the number to the plan');
  await page.keyboard.press('Tab');
  assert.match(await focused(page), /^Call the breeder Example breeder \+1 555 0100$/);
  await tabTo(page, 'Cold');
  await page.keyboard.press('Space');
  await page.locator('.answer').waitFor({ state: 'detached' });
});

test('the focus stays where it is while the clock on the screen runs', async ({ bench }) => {
  const page = await withChick(bench);
  await tabTo(page, 'Other amount');
  const link = await page.evaluateHandle(() => document.activeElement);
  await page.clock.runFor('00:03:00');
  assert.equal(await focused(page), 'Other amount');
  assert.ok(await link.evaluate((element) => element === document.activeElement));
});
