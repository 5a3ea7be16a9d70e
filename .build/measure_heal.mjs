// How long a copy of 20,000 entries takes to be whole again after it was cleared, with the processor slowed four times,
// and the longest that the page answers no tap meanwhile. It needs a release build: node .build/measure_heal.mjs
import { Bench, offlineReady, started, throttle, until } from '../tests/browser/harness.mjs';
import { countInSecond, openApp } from '../tests/browser/owner.mjs';
import { longJournal, watchForUse, usable } from './measure_app.mjs';

const RATE = Number(process.env.RATE ?? 4);
const RUNS = Number(process.env.RUNS ?? 3);

// Keeps the browser's own list of tasks over 50 ms (W3C Long Tasks), each with its start.
const watchTasks = () => {
  window.longTasks = [];
  new PerformanceObserver((list) => {
    window.longTasks.push(...list.getEntries().map(({ startTime, duration }) => [startTime, duration]));
  }).observe({ type: 'longtask', buffered: true });
};

const tasksFrom = (page, start) => page.evaluate((start) => window.longTasks.filter(([at, ms]) => at + ms > start).map(([, ms]) => Math.round(ms)), start);

const clearFirst = (page) =>
  page.evaluate(() => {
    Object.keys(localStorage)
      .filter((key) => /\/(entry|segment)\//.test(key))
      .forEach((key) => localStorage.removeItem(key));
  });

const clearSecond = (page) =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const request = indexedDB.open('perchlight');
        request.onsuccess = () => {
          const clear = request.result.transaction('entries', 'readwrite');
          clear.objectStore('entries').clear();
          clear.oncomplete = () => done(request.result.close());
        };
      }),
  );

const now = (page) => page.evaluate(() => performance.now());
const countInFirst = (page) =>
  page.evaluate(() =>
    Object.entries(localStorage)
      .filter(([key]) => /\/(entry|segment)\//.test(key))
      .reduce((all, [, text]) => all + text.split('\n').length, 0),
  );

const tell = (what, ms, tasks) =>
  console.log(`${what.padEnd(44)} ${Math.round(ms)} ms, longest task ${Math.max(0, ...tasks)} ms; over 50 ms: ${tasks.join(' ') || 'none'}`);

const bench = new Bench();
try {
  const { texts, entries } = longJournal();
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await openApp(page, site);
  await page.evaluate((texts) => Object.entries(JSON.parse(texts)).forEach(([key, text]) => localStorage.setItem(key, text)), texts);
  await page.reload();
  await started(page);
  await until('the second copy has all', async () => (await countInSecond(page)) === entries, 60_000);
  await offlineReady(page);
  await page.close();
  for (let run = 0; run < RUNS; run += 1) {
    const again = await context.newPage();
    await again.addInitScript(watchTasks);
    await again.addInitScript(watchForUse);
    await again.goto(site.url);
    await started(again);
    await again.waitForTimeout(1_500);
    await clearSecond(again);
    await throttle(again, RATE);
    const [useMs] = await Promise.all([usable(again), again.reload()]);
    // Counting is work for the browser, not for the page's own thread.
    await until('the second copy has all', async () => (await countInSecond(again)) >= entries, 120_000);
    const healedMs = (await now(again)) - useMs;
    await again.waitForTimeout(3_000);
    tell('second copy cleared: after the start', healedMs, await tasksFrom(again, useMs));

    await clearFirst(again);
    const [afterMs] = await Promise.all([usable(again), again.reload()]);
    tell('first copy cleared: usable from the start on', afterMs, await tasksFrom(again, 0));
    await again.waitForTimeout(3_000);
    await again.evaluate(() => {
      const line = document.querySelector('.status-line p');
      let tappedAt;
      document.addEventListener('click', ({ timeStamp }) => (tappedAt = timeStamp), { capture: true, once: true });
      new MutationObserver((_, watch) => {
        if (tappedAt !== undefined && line.dataset.kept === 'Kept') {
          watch.disconnect();
          console.debug(`kept after ${performance.now() - tappedAt} ms`);
        }
      }).observe(line, { attributes: true, childList: true, characterData: true, subtree: true });
      location.hash = '#/log';
    });
    const done = again.getByRole('button', { name: 'Done', exact: true });
    // Where no feed is due the volume is empty.
    await again.getByLabel('Taken').fill('30');
    await done.scrollIntoViewIfNeeded();
    await again.waitForTimeout(2_000);
    const tappedAt = await now(again);
    const { x, y, width, height } = await done.boundingBox();
    const [message] = await Promise.all([
      again.waitForEvent('console', { predicate: (message) => message.text().startsWith('kept'), timeout: 300_000 }),
      again.touchscreen.tap(x + width / 2, y + height / 2),
    ]);
    const all = await countInFirst(again);
    await again.waitForTimeout(4_000);
    tell(`first copy cleared: from the tap to kept (${all})`, Number(message.text().match(/[\d.]+/)[0]), await tasksFrom(again, tappedAt));
    await again.close();
  }
} finally {
  await bench.clear();
}
console.log(bench.unexpected().join('\n'));
