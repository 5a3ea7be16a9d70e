// The page before, during and after the start of the optimised app.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { GLANCE, leaveGlance } from './glance.mjs';
import { axe, DIST, overflow, shot, started, withoutWorker } from './harness.mjs';

const withoutApp = async (bench, options = {}) => {
  const { site, context, page } = await withoutWorker(bench, options);
  bench.allow(/Failed to load resource: net::ERR_FAILED/, /Failed to fetch/, /thrown: .*fetch/);
  await context.route('**/*.wasm', (route) => route.abort());
  return { site, page };
};

test('the optimised app starts, and nothing shifts while it takes the page over', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  const warnings = [];
  page.on('console', (message) => message.type() === 'warning' && warnings.push(message.text()));
  await page.addInitScript(() => {
    window.shifts = [];
    new PerformanceObserver((list) => {
      window.shifts.push(...list.getEntries().map((entry) => entry.value));
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await page.goto(site.url);
  await started(page);
  assert.equal(await page.locator('#app .first').count(), 0, 'the first content has made place');
  assert.equal(await page.locator('#trouble').isVisible(), false);
  await page.waitForTimeout(500);
  assert.deepEqual(await page.evaluate(() => window.shifts), []);
  assert.deepEqual(warnings, []);
  await shot(page, 'started');
});

test('the page says what it is and warns before the app is there', () => {
  const html = readFileSync(join(DIST, 'index.html'), 'utf8');
  for (const words of ['<h1>Perchlight</h1>', 'not veterinary advice', 'Do not feed', '<noscript>']) {
    assert.ok(html.includes(words), words);
  }
});

test('the content policy allows nothing inline and no other host', async ({ bench }) => {
  const html = readFileSync(join(DIST, 'index.html'), 'utf8');
  const policy = html.match(/http-equiv="Content-Security-Policy" content="([^"]+)"/)[1];
  assert.match(policy, /default-src 'none'/);
  assert.match(policy, /connect-src 'self'/);
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|https?:|\*/);
  assert.doesNotMatch(html, /<script(?![^>]*\bsrc=)[^>]*>/, 'no inline script');
  assert.doesNotMatch(html, /\sstyle=|<style/, 'no inline style');

  const site = await bench.site();
  const other = await bench.site();
  const { page } = await bench.phone(site);
  bench.allow(/Content Security Policy/, /request to another origin/);
  await page.goto(site.url);
  await started(page);
  const answer = await page.evaluate(async (address) => {
    const script = document.createElement('script');
    script.textContent = 'window.inlineHasRun = true';
    document.body.append(script);
    const reached = await fetch(address, { mode: 'no-cors' }).then(() => true, () => false);
    return { inlineHasRun: window.inlineHasRun === true, reached };
  }, other.url);
  assert.deepEqual(answer, { inlineHasRun: false, reached: false });
});

for (const theme of ['dark', 'light']) {
  test(`the page without the app is accessible and fits a narrow screen (${theme})`, async ({ bench }) => {
    const { site, page } = await withoutApp(bench, { theme });
    await page.goto(site.url);
    await leaveGlance(page, GLANCE);
    await page.goto(`${site.url}#/wrong`);
    await page.reload();
    await page.locator('#trouble').waitFor();
    await page.locator('#last-known-aid').waitFor();
    assert.deepEqual(await axe(page), []);
    await shot(page, `without-app-${theme}`);
    await page.setViewportSize({ width: 320, height: 640 });
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    assert.equal(await overflow(page), 0);
    await shot(page, `without-app-${theme}-320-large-text`);
  });
}

test('the chosen theme is there before the app', async ({ bench }) => {
  const { site, page } = await withoutApp(bench, { theme: 'dark' });
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const bars = () =>
    page.evaluate(() => {
      const probe = document.createElement('p');
      document.body.append(probe);
      return [...document.querySelectorAll('meta[name="theme-color"]')].map((meta) => {
        probe.style.color = meta.content;
        return getComputedStyle(probe).color;
      });
    });
  await page.goto(site.url);
  const night = await ground();
  assert.equal((await bars())[0], night, "the browser's bars have the ground's colour at night");
  await page.evaluate(() => localStorage.setItem('perchlight/v1/setting/theme', 'day'));
  await page.reload();
  const day = await ground();
  assert.deepEqual(await bars(), [day, day]);
  await page.emulateMedia({ colorScheme: 'light' });
  assert.equal(await ground(), day, 'day by choice is day by the device');
  await page.evaluate(() => localStorage.setItem('perchlight/v1/setting/theme', 'night'));
  await page.reload();
  assert.equal(await ground(), night, 'night by choice is night by the device');
  assert.deepEqual(await bars(), [night, night]);
  assert.notEqual(night, day);
});
