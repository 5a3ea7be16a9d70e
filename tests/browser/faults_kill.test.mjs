// A browser killed with SIGKILL, all its processes at once: what was shown as kept is there afterwards.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';
import { test } from './fixtures.mjs';
import { started, tell } from './harness.mjs';
import { journalWords, kept, missing, note, noteAtOnce, openApp, typeInChick } from './owner.mjs';

// `make prove` asks for 50 of each.
const KILLS = Number(process.env.KILLS ?? 10);
const KILLS_WHILE_KEEPING = Number(process.env.KILLS ?? 5);
const LONGEST_MS = 1_200_000;

const withChick = async (bench) => {
  const site = await bench.site();
  const browser = bench.killable(site);
  const page = await browser.open();
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  return { site, browser, page };
};

const openAgain = async (browser, site) => {
  const page = await browser.open();
  await openApp(page, site);
  return page;
};

test(`a browser killed 100 ms after "kept" has lost nothing, ${KILLS} times`, async ({ bench }) => {
  test.setTimeout(LONGEST_MS);
  const { site, browser, page: first } = await withChick(bench);
  let page = first;
  let said = '';
  const noted = [];
  const lost = new Set();
  for (let round = 1; round <= KILLS; round += 1) {
    noted.push(`made-up note ${round}`);
    await note(page, noted.at(-1));
    said = await page.locator('.status-line p').innerText();
    await sleep(100);
    await browser.kill();
    page = await openAgain(browser, site);
    (await missing(page, noted)).forEach((text) => lost.add(text));
  }
  assert.match(said, /Kept\.$/);
  tell({ fault: 'browser killed 100 ms after "Kept."', trials: KILLS, lost: [...lost], said: 'Kept.' });
});

// Calls `told` with each state of keeping that the page shows, as soon as it shows it.
const follow = async (page, told) => {
  await page.exposeBinding('toldState', (_, state) => told(state));
  await page.evaluate(() => {
    const line = document.querySelector('.status-line p');
    new MutationObserver(() => window.toldState(line.dataset.kept)).observe(line, { attributeFilter: ['data-kept'] });
  });
};

test(`a browser killed while it says "Keeping" opens as before or after that act, ${KILLS_WHILE_KEEPING} times`, async ({ bench }) => {
  test.setTimeout(LONGEST_MS);
  const { site, browser, page: first } = await withChick(bench);
  let page = first;
  const safe = ['Chick added: Ember'];
  const lost = new Set();
  const ends = { before: 0, after: 0, whileKeeping: 0 };
  for (let round = 1; round <= KILLS_WHILE_KEEPING; round += 1) {
    const states = [];
    await follow(page, (state) => states.push(state));
    const text = `made-up note ${round}`;
    const isTapped = noteAtOnce(page, text).catch(() => {});
    // From the tap on, a little later each round: both before and after the copies have answered.
    while (states.length === 0) {
      await sleep(1);
    }
    await sleep(((round - 1) * 7) % 60);
    const wasShownAsKept = states.includes('Kept');
    await browser.kill();
    await isTapped;
    ends.whileKeeping += Number(!wasShownAsKept);
    page = await openAgain(browser, site);
    const isMissed = (await missing(page, [...safe, text])).includes(text);
    (await missing(page, wasShownAsKept ? [...safe, text] : safe)).forEach((words) => lost.add(words));
    if (!isMissed) {
      safe.push(text);
    }
    ends[isMissed ? 'before' : 'after'] += 1;
    const words = (await journalWords(page)).map((line) => line.trim()).sort();
    assert.deepEqual(words, [...safe].sort(), 'nothing but whole acts');
  }
  assert.ok(ends.whileKeeping > 0, 'at least one kill came before "Kept"');
  tell({
    fault: 'browser killed while it says "Keeping…"',
    trials: KILLS_WHILE_KEEPING,
    lost: [...lost],
    said: `Keeping… (${ends.whileKeeping} killed before "Kept."; ${ends.after} acts there afterwards, ${ends.before} not)`,
  });
});
