// The app beside its twin (tests/bench/twin: React with recharts and a workbox worker, the same first screen and chart,
// nothing judged), measured in turns in one run, so that what else the machine does falls on both alike.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync } from 'node:zlib';
import { Bench, offlineReady, throttle } from '../tests/browser/harness.mjs';
import { kept, openApp, typeInChick } from '../tests/browser/owner.mjs';
import { chickOfToday, median, said, setClockToEvening } from './measure_app.mjs';
import { isLater } from './split.mjs';

const TWIN = fileURLToPath(new URL('../target/twin', import.meta.url));
const RUNS = 7;
// As Lighthouse's slow 4G: 150 ms there and back, 1.6 Mbit/s down, 750 kbit/s up.
const SLOW_4G = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 93_750 };

const packed = (folder, isCounted) =>
  readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => /\.(html|css|js|wasm|svg|webmanifest)$/.test(name) && isCounted(name))
    .reduce((sum, name) => sum + brotliCompressSync(readFileSync(join(folder, name))).length, 0);

// Says when an element is there and the page is free to answer a tap, and when something was painted first.
const watch = (selector) => {
  const seen = new MutationObserver(() => {
    if ((document.querySelector(selector)?.getClientRects().length ?? 0) > 0) {
      seen.disconnect();
      setTimeout(() => console.debug(`usable after ${performance.now()} ms`));
    }
  });
  seen.observe(document, { childList: true, subtree: true, attributes: true });
  new PerformanceObserver((list) => {
    const [first] = list.getEntriesByName('first-contentful-paint');
    if (first !== undefined) {
      console.debug(`painted after ${first.startTime} ms`);
    }
  }).observe({ type: 'paint', buffered: true });
};

const timesOf = async (context, url, selector, slow) => {
  const page = await context.newPage();
  await page.addInitScript(watch, selector);
  await throttle(page, slow.rate);
  if (slow.network !== undefined) {
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', slow.network);
  }
  const [usable, painted] = await Promise.all([said(page, 'usable'), said(page, 'painted'), page.goto(url)]);
  await page.close();
  return { usable, painted };
};

const OURS_OF_CHICK = 'html[data-started="true"] .dock a[href^="#/log"]';

// Each of both in turns: { usable: [ours, twin], painted: [ours, twin] }, medians in milliseconds.
const inTurns = async (one, other) => {
  const all = [[], []];
  for (let run = 0; run <= RUNS; run += 1) {
    for (const [times, measure] of [[all[0], one], [all[1], other]]) {
      times.push(await measure());
    }
  }
  // The first of each is not counted: it warms the browser's own caches.
  const of = (name) => all.map((times) => median(times.slice(1).map((time) => time[name])));
  return { usable: of('usable'), painted: of('painted') };
};

const warm = async (bench) => {
  const sites = [await bench.site(), await bench.site({ folder: TWIN })];
  const [ours, twin] = await Promise.all(sites.map((site) => bench.phone(site)));
  await setClockToEvening(ours.context);
  await openApp(ours.page, sites[0]);
  await typeInChick(ours.page, chickOfToday());
  await kept(ours.page);
  await offlineReady(ours.page);
  await twin.page.goto(sites[1].url);
  await twin.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await Promise.all([ours.page.close(), twin.page.close()]);
  await Promise.all(sites.map((site) => site.stop()));
  const at = (rate, selector) =>
    inTurns(
      () => timesOf(ours.context, sites[0].url, selector, { rate }),
      () => timesOf(twin.context, sites[1].url, '#log', { rate }),
    );
  return {
    plain: await at(1, OURS_OF_CHICK),
    slowed: await at(6, OURS_OF_CHICK),
    page: await at(6, '#last-known a[href="#/weigh"]'),
  };
};

const cold = async (bench) => {
  const sites = [await bench.site(), await bench.site({ folder: TWIN })];
  const slow = { rate: 4, network: SLOW_4G };
  const once = (site, selector) => async () => {
    const { context } = await bench.phone(site);
    const times = await timesOf(context, site.url, selector, slow);
    await context.close();
    return times;
  };
  return inTurns(once(sites[0], 'html[data-started="true"] .way'), once(sites[1], '#log'));
};

// The rows of the table of budgets: what is compared, and ours as a share of the twin's.
export const twinRows = async () => {
  const bench = new Bench();
  try {
    const { plain, slowed, page } = await warm(bench);
    const slow4g = await cold(bench);
    const twinLoad = packed(TWIN, () => true);
    const share = ([ours, twin], unit = 'ms') => `${(ours / twin).toFixed(2)} (${Math.round(ours)} and ${Math.round(twin)} ${unit})`;
    const loads = (isCounted) => share([packed('dist', isCounted) / 1000, twinLoad / 1000], 'kB');
    return [
      ['first load, brotli', loads((name) => !isLater(name))],
      ['the same with the piece that judges a chick', loads((name) => !name.endsWith('-rest.wasm'))],
      ['warm offline start to usable', share(plain.usable)],
      ['warm offline start to usable, CPU 6× slowed', share(slowed.usable)],
      ['the same, until the page before the app can be used', share(page.usable)],
      ['warm offline start to the first paint, CPU 6× slowed', share(slowed.painted)],
      ['first visit on slow 4G, CPU 4× slowed, to usable', share(slow4g.usable)],
      ['first visit on slow 4G, CPU 4× slowed, to the first paint', share(slow4g.painted)],
    ];
  } finally {
    await bench.clear();
  }
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  (await twinRows()).forEach((row) => console.log(row.join(': ')));
}
