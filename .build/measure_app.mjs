// Times and memory of the built app in the browser, with the processor slowed as on a phone.
// It tells numbers and judges none: on a busy machine the times are worse than on a phone.
import { execFileSync } from 'node:child_process';
import { Bench, offlineReady, started, throttle, until } from '../tests/browser/harness.mjs';
import { CHICK, countInSecond, go, kept, openApp, typeInChick } from '../tests/browser/owner.mjs';

const RUNS = 7;
const ENTRIES = 20_000;
const DAY_MS = 86_400_000;

export const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const isoDay = (days) => new Date(Date.now() + days * DAY_MS).toISOString().slice(0, 10);

// What is measured in the page is said on the console, because asking the page would put the browser driver's own script
// into it and slow what is measured.
export const said = async (page, word) => {
  const message = await page.waitForEvent('console', { predicate: (message) => message.text().startsWith(word), timeout: 60_000 });
  return Number(message.text().match(/[\d.]+/)[0]);
};

// Says when the way to log a feed is there and the page is free to answer a tap.
export const watchForUse = () => {
  const watch = new MutationObserver(() => {
    const link = document.querySelector('html[data-started="true"] .dock a[href^="#/log"]');
    if (link !== null && link.getClientRects().length > 0) {
      watch.disconnect();
      setTimeout(() => {
        console.debug(`usable after ${performance.now()} ms`);
      });
    }
  });
  watch.observe(document, { childList: true, subtree: true, attributes: true });
};

export const usable = (page) => said(page, 'usable');

// Says how long after the next tap the status line says kept.
const watchForKept = () => {
  const line = document.querySelector('.status-line p');
  let tappedAt;
  document.addEventListener('click', (event) => (tappedAt = event.timeStamp), { capture: true, once: true });
  const watch = new MutationObserver(() => {
    if (tappedAt !== undefined && line.dataset.kept === 'Kept' && line.textContent.endsWith('Kept.')) {
      watch.disconnect();
      console.debug(`kept after ${performance.now() - tappedAt} ms`);
    }
  });
  watch.observe(line, { attributes: true, childList: true, characterData: true, subtree: true });
};

// The chick of the tests, weighed today.
export const chickOfToday = () => ({ ...CHICK, hatched: isoDay(-93), weighed: isoDay(0) });

// Every page of it has ten to nine in the evening of today, London's winter time, whatever the hour is here: what is due, and what
// *Done* asks, depend on it. Timers and `performance` stay the browser's own.
export const setClockToEvening = (context) => {
  const evening = new Date(`${isoDay(0)}T20:50:00Z`).getTime();
  return context.addInitScript((aheadMs) => {
    const Own = Date;
    globalThis.Date = class extends Own {
      constructor(...parts) {
        super(...(parts.length === 0 ? [Own.now() + aheadMs] : parts));
      }

      static now() {
        return Own.now() + aheadMs;
      }
    };
  }, evening - Date.now());
};

// Milliseconds from the start of the navigation to usable, each time in a new tab of the running browser.
const startTimes = async (context, site, rate) => {
  const times = [];
  // The first is not counted: it warms the browser's own caches, as yesterday's use does.
  for (let run = 0; run <= RUNS; run += 1) {
    const page = await context.newPage();
    await page.addInitScript(watchForUse);
    await throttle(page, rate);
    const [afterMs] = await Promise.all([usable(page), page.goto(site.url)]);
    times.push(afterMs);
    await page.close();
  }
  return times.slice(1);
};

// The processor time of the page's own thread until it is usable, in milliseconds and not slowed: what other programs on
// this machine do changes it little.
const startWork = async (context, site) => {
  const times = [];
  for (let run = 0; run < RUNS; run += 1) {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable');
    const worked = async () => {
      const { metrics } = await session.send('Performance.getMetrics');
      return metrics.find(({ name }) => name === 'ThreadTime').value * 1000;
    };
    await page.addInitScript(watchForUse);
    const before = await worked();
    await Promise.all([usable(page), page.goto(site.url, { waitUntil: 'commit' })]);
    times.push((await worked()) - before);
    await page.close();
  }
  return times;
};

// Milliseconds from the tap on Done to the status line that says kept.
const doneTimes = async (page, rate) => {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
  const times = [];
  for (let run = 0; run < RUNS; run += 1) {
    await go(page, '#/log');
    const done = page.getByRole('button', { name: 'Done', exact: true });
    await done.scrollIntoViewIfNeeded();
    await page.waitForTimeout(500);
    await page.evaluate(watchForKept);
    const { x, y, width, height } = await done.boundingBox();
    const [afterMs] = await Promise.all([said(page, 'kept'), page.touchscreen.tap(x + width / 2, y + height / 2)]);
    times.push(afterMs);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator('.status-line', { hasText: 'Taken back' }).waitFor();
    await kept(page);
  }
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  return times;
};

// What the page holds after a collection: JavaScript's heap and WebAssembly's memory, in bytes.
const memory = async (page) => {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('Performance.enable');
  const { metrics } = await session.send('Performance.getMetrics');
  const heap = metrics.find(({ name }) => name === 'JSHeapUsedSize').value;
  // A second call of the loader gives the running program's exports.
  const wasm = await page.evaluate(async () => {
    const { dataset } = document.querySelector('script[data-wasm]');
    const { memory } = await (await import(dataset.module)).default();
    return memory.buffer.byteLength;
  });
  return { heap, wasm };
};

const newPhone = async (bench) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await setClockToEvening(context);
  return { site, context, page };
};

const ofOneChick = async (bench) => {
  const { site, context, page } = await newPhone(bench);
  await openApp(page, site);
  await typeInChick(page, chickOfToday());
  await kept(page);
  await offlineReady(page);
  const tapToKeptMs = await doneTimes(page, 4);
  await site.stop();
  return { warmOfflineStartMs: await startTimes(context, site, 6), workMs: await startWork(context, site), tapToKeptMs };
};

// The first copy of a phone after years, as JSON, and its number of entries.
export const longJournal = () => {
  const today = Math.floor(Date.now() / DAY_MS);
  const command = ['bench', '--no-default-features', '--quiet', '--bench', 'long_journal', '--', ENTRIES, today];
  const texts = execFileSync('cargo', command.map(String), { maxBuffer: 1 << 26, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  return { texts, entries: texts.match(/\\"v\\":1/g).length };
};

const ofManyEntries = async (bench) => {
  const { texts, entries: expected } = longJournal();
  const { site, context, page } = await newPhone(bench);
  await openApp(page, site);
  await page.evaluate((texts) => {
    Object.entries(JSON.parse(texts)).forEach(([key, text]) => localStorage.setItem(key, text));
  }, texts);
  await page.reload();
  await started(page);
  await until('the second copy has all', async () => (await countInSecond(page)) === expected, 60_000);
  await offlineReady(page);
  await page.close();
  const startMs = await startTimes(context, site, 4);
  const workMs = await startWork(context, site);
  const again = await context.newPage();
  await openApp(again, site);
  await again.waitForTimeout(2_000);
  const afterStart = await memory(again);
  const tapToKeptMs = await doneTimes(again, 4);
  const start = performance.now();
  await go(again, '#/journal');
  await again.locator('.journal-line').first().waitFor();
  const journalMs = performance.now() - start;
  return { entries: expected, startMs, workMs, memory: afterStart, tapToKeptMs, journalMs };
};

// Everything measured in the browser.
export const measureApp = async () => {
  const answers = [];
  for (const measure of [ofOneChick, ofManyEntries]) {
    const bench = new Bench();
    try {
      answers.push(await measure(bench));
    } finally {
      await bench.clear();
    }
    if (bench.unexpected().length > 0) {
      throw new Error(bench.unexpected().join('\n'));
    }
  }
  const [oneChick, manyEntries] = answers;
  return { oneChick, manyEntries };
};

// The milliseconds of one outlook on 5,000 entries, as the bench prints them.
export const outlookMs = () => {
  const text = execFileSync('cargo', ['bench', '--no-default-features', '--quiet', '--bench', 'outlook'], { encoding: 'utf8' });
  // The journal has one entry more, the chick's own.
  const row = text.split('\n').map((line) => line.trim().split(/\s+/)).find(([entries]) => Math.abs(Number(entries) - 5_000) < 10);
  return Number(row[1]);
};
