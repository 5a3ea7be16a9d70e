// Every screen and state for everyone: axe in both themes, 320 px with 200 % text, target sizes, forced
// colours, no movement. The keyboard and what is read out have files of their own.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from './fixtures.mjs';
import { axe, cutWords, overflow, shot } from './harness.mjs';
import { go, kept, openApp, typeInChick, weigh } from './owner.mjs';
import { SCREENS, STATES, walk, withLosingChick } from './states.mjs';

test('the walk knows every screen that the app knows', () => {
  const source = readFileSync(new URL('../../src/ui/route.rs', import.meta.url), 'utf8');
  const table = source.match(/const NAMED: [^=]*= \[([^;]*)\];/)[1];
  const names = [...table.matchAll(/\("([a-z-]+)", /g)].map(([, name]) => name);
  assert.ok(names.length > 15);
  assert.deepEqual([...SCREENS].sort(), names.sort());
});

for (const theme of ['dark', 'light']) {
  test(`axe finds nothing on any screen in any state, ${theme}`, async ({ bench }) => {
    test.setTimeout(300_000);
    const page = await withLosingChick(bench, { theme });
    await walk(page, STATES, async (name) => {
      await shot(page, `${name}-${theme}`);
      assert.deepEqual(await axe(page), [], name);
    });
  });

  test(`axe finds nothing on the first start, with a made-up chick and under an alarm, ${theme}`, async ({ bench }) => {
    const site = await bench.site();
    const { page } = await bench.phone(site, { theme });
    await openApp(page, site);
    assert.deepEqual(await axe(page), [], 'first start');
    await page.getByRole('button', { name: 'Show me an example' }).click();
    await page.locator('.next-feed').waitFor();
    await shot(page, `demo-${theme}`);
    assert.deepEqual(await axe(page), [], 'made-up chick');
    await page.getByRole('button', { name: 'Leave the example' }).click();
    await typeInChick(page);
    await weigh(page, 830);
    const sure = page.getByRole('button', { name: 'Yes, that is what the scale says' });
    await sure.click();
    await kept(page);
    await go(page, '#/now');
    await page.locator('.lamp-band[data-level="emergency"]').waitFor();
    await shot(page, `alarm-by-weight-${theme}`);
    assert.deepEqual(await axe(page), [], 'alarm');
  });
}

test('no screen scrolls sideways at 320 px with text at 200 %', async ({ bench }) => {
  test.setTimeout(180_000);
  const page = await withLosingChick(bench, { viewport: { width: 320, height: 640 } });
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  });
  await walk(page, STATES, async (name) => {
    await shot(page, `${name}-320-200`);
    assert.equal(await overflow(page), 0, name);
    assert.deepEqual(await cutWords(page), [], name);
  });
});

test('everything that is pressed is at least 48 px high', async ({ bench }) => {
  test.setTimeout(120_000);
  const page = await withLosingChick(bench);
  await walk(page, STATES, async (name) => {
    const small = await page.evaluate(() => {
      const pressed = [...document.querySelectorAll('a[href], button, summary, select, input:not([type=radio]):not([type=checkbox]), label.choice__option')];
      const seen = pressed.filter((element) => element.offsetParent !== null && !element.closest('p'));
      return seen.filter((element) => element.getBoundingClientRect().height < 47.5).map((element) => element.outerHTML.slice(0, 120));
    });
    assert.deepEqual(small, [], name);
  });
});

// Contrast of two colours (W3C WCAG 2.2, definitions of contrast ratio and relative luminance).
const contrast = (one, other) => {
  const luminance = (colour) => {
    const parts = colour.match(/[\d.]+/g).slice(0, 3).map((part) => Number(part) / 255);
    const linear = parts.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  };
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
};

for (const theme of ['dark', 'light']) {
  test(`with forced colours the shapes of the levels and the ring of the focus stay visible, ${theme}`, async ({ bench }) => {
    const page = await withLosingChick(bench, { theme });
    await page.emulateMedia({ forcedColors: 'active', colorScheme: theme });
    await go(page, '#/wrong');
    const marks = [];
    for (const sign of await page.locator('.most-seen .sign').all()) {
      await sign.click();
      await page.locator('.answer').waitFor();
      const mark = await page.evaluate(() => {
        const path = document.querySelector('.answer .level-mark path');
        return {
          level: path.parentElement.dataset.level,
          fill: getComputedStyle(path).fill,
          ground: getComputedStyle(path.closest('.answer')).backgroundColor,
          size: path.getBoundingClientRect().width,
        };
      });
      marks.push(mark);
    }
    assert.ok(new Set(marks.map(({ level }) => level)).size >= 3, 'several levels are on the screen');
    for (const { level, fill, ground, size } of marks) {
      // WCAG 2.2, 1.4.11: graphics 3 to 1.
      assert.ok(contrast(fill, ground) >= 3 && size >= 12, `${level}: ${fill} on ${ground}, ${size} px`);
    }
    await shot(page, `forced-wrong-${theme}`);
    await page.keyboard.press('Tab');
    for (let presses = 0; presses < 12; presses += 1) {
      await page.keyboard.press('Tab');
      const ring = await page.evaluate(() => {
        const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(document.activeElement);
        return { outlineStyle, width: Number.parseFloat(outlineWidth), outlineColor, ground: getComputedStyle(document.body).backgroundColor, html: document.activeElement.outerHTML.slice(0, 80) };
      });
      const ground = theme === 'dark' ? 'rgb(0, 0, 0)' : 'rgb(255, 255, 255)';
      assert.ok(ring.outlineStyle !== 'none' && ring.width >= 2 && contrast(ring.outlineColor, ground) >= 3, JSON.stringify(ring));
    }
    await shot(page, `forced-focus-${theme}`);
    for (const screen of ['now', 'weight', 'weigh', 'handover', 'settings']) {
      await go(page, `#/${screen}`);
      await shot(page, `forced-${screen}-${theme}`);
    }
    await go(page, '#/now');
    const line = (place) => place.evaluate((element) => getComputedStyle(element).borderBlockStartWidth);
    const bar = page.locator('.bottom-bar__place');
    assert.notEqual(await line(bar.first()), await line(bar.last()), 'the place that one is at is told apart');
    await go(page, '#/weigh');
    await page.locator('input[name="crop"]').first().check();
    const [chosen, other] = await page.locator('.choice__option').evaluateAll((options) =>
      options.slice(0, 2).map((option) => {
        const { borderWidth, borderColor } = getComputedStyle(option);
        return `${borderWidth} ${borderColor}`;
      }),
    );
    assert.notEqual(chosen, other, 'the choice is told apart');
  });
}

test('nothing moves for those who asked for less movement', async ({ bench }) => {
  test.setTimeout(120_000);
  const page = await withLosingChick(bench, { reducedMotion: 'reduce' });
  await walk(page, STATES, async (name) => {
    const moving = await page.evaluate(() => {
      const running = document.getAnimations().map((animation) => animation.effect.target.outerHTML.slice(0, 80));
      const moved = [...document.querySelectorAll('*')].filter((element) => {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element);
        return /[1-9]/.test(transitionDuration) || animationName !== 'none' || scrollBehavior === 'smooth';
      });
      return [...running, ...moved.map((element) => element.outerHTML.slice(0, 80))];
    });
    assert.deepEqual(moving, [], name);
  });
});

test('the check above sees what moves when less movement was not asked for', async ({ bench }) => {
  const page = await withLosingChick(bench);
  await go(page, '#/now');
  await page.clock.fastForward('00:11:00');
  const duration = () => page.locator('.next-feed__countdown').evaluate((element) => getComputedStyle(element).transitionDuration);
  assert.notEqual(await duration(), '0s');
  await page.emulateMedia({ reducedMotion: 'reduce' });
  assert.equal(await duration(), '0s');
});
