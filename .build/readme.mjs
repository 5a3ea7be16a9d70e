// The pictures that the README and, before installing, a phone show, of a made-up chick: node .build/readme.mjs
import { fileURLToPath } from 'node:url';
import { Bench, clock, sharedBrowser } from '../tests/browser/harness.mjs';
import { day, quietDays } from '../tests/browser/frightened.mjs';
import { go, openApp } from '../tests/browser/owner.mjs';
import { clockAt, takeIn } from '../tests/browser/script.mjs';

const FOLDER = fileURLToPath(new URL('../public/screenshots/', import.meta.url));
// What is shown: file, theme, address, and what must be there before the picture is taken.
const PICTURES = [
  ['now', 'dark', '#/now', '.next-feed[data-lit="true"]'],
  ['weight', 'light', '#/weight', '.chart__picture'],
  ['help', 'light', '#/wrong', '.most-seen'],
];

const browser = await sharedBrowser();
const bench = new Bench(browser);
const site = await bench.site();
const at = (time) => `${day(9)}T${time}:00Z`;
for (const [name, theme, hash, there] of PICTURES) {
  const { page } = await bench.phone(site, { theme, viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 });
  await clock(page, at('20:56'));
  await openApp(page, site);
  const script = quietDays();
  script.entries = script.entries.filter((entry) => entry.at * 1_000 < Date.parse(at('20:56')));
  await takeIn(page, script);
  await page.locator('.status-line button[aria-label="Close"]').click();
  await clockAt(page, at('20:58'));
  await go(page, hash);
  await page.locator(there).waitFor();
  await page.evaluate(() => document.activeElement?.blur());
  await page.screenshot({ path: `${FOLDER}${name}.png` });
  console.log(`${name}.png`);
}
const unexpected = bench.unexpected();
await bench.clear();
await browser.close();
if (unexpected.length > 0) {
  console.error(unexpected);
  process.exit(1);
}
