// Takes the pictures of the app that a phone shows before installing it, into public/screenshots/, from the build in dist/:
// node .build/screenshots.mjs. Needed only when these screens have changed.
import { fileURLToPath } from 'node:url';
import { Bench, started } from '../tests/browser/harness.mjs';
import { go, openApp } from '../tests/browser/owner.mjs';
import { Script, clockAt, takeIn } from '../tests/browser/script.mjs';

const GRAMS = [1040, 1036, 1041, 1049, 1047, 1056, 1061];
const SCREENS = ['now', 'weight'];

const bench = new Bench();
const site = await bench.site();
const { page } = await bench.phone(site, { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 });
const script = new Script().added('2026-11-01T12:00', { unconfirmed: [] });
GRAMS.forEach((grams, index) => {
  const day = `2026-11-0${index + 2}`;
  script.weighed(`${day}T06:45`, grams).fed(`${day}T07:00`, 'morning', 60).droppings(`${day}T07:10`).fed(`${day}T14:00`, 'midday', 40);
  script.fed(`${day}T21:00`, 'bedtime', 60);
});
script.entries.pop();
await clockAt(page, '2026-11-08T20:10:00Z');
await openApp(page, site);
await takeIn(page, script);
// Without the notice of what was taken in.
await page.reload();
await started(page);
for (const screen of SCREENS) {
  await go(page, `#/${screen}`);
  await page.evaluate(() => document.fonts.ready);
  const path = fileURLToPath(new URL(`../public/screenshots/${screen}.png`, import.meta.url));
  await page.screenshot({ path });
  console.log(path);
}
await bench.clear();
