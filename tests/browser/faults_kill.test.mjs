// Browsers killed with SIGKILL, all their processes at once: what was shown as kept is there afterwards.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';
import { KILLABLE, comesBack, phoneOf, withChick } from './engines.mjs';
import { test } from './fixtures.mjs';
import { tell } from './harness.mjs';
import { CHICK } from './owner.mjs';

const ADDED = `Chick added: ${CHICK.name}`;
const LONGEST_MS = 3_000_000;
// `make prove` asks for 50 of each. WebKitGTK is slow to start without automation, and its page drives itself.
const PROVEN = process.env.KILLS === undefined ? null : Number(process.env.KILLS);
const KILLS = { Chromium: 6, Firefox: 2, WebKitGTK: 2 };
const KILLS_WHILE_KEEPING = { Chromium: 5, Firefox: 3 };

const killable = async (bench, engine) => {
  const site = await bench.site({ folder: bench.copyOfBuild() });
  const phone = await phoneOf(bench, engine, site, KILLABLE);
  await phone.open(site.url);
  await withChick(phone);
  await phone.kept();
  return { site, phone };
};

const killAndOpen = async ({ site, phone }) => {
  await phone.door.kill();
  await phone.door.open();
  await phone.open(site.url);
};

const killedAfterKept = (engine, kills, delayMs, when) =>
  test(`${engine}: killed ${when} it says "kept", it has lost nothing, ${kills} times`, async ({ bench }) => {
    test.setTimeout(LONGEST_MS);
    const own = await killable(bench, engine);
    const { phone } = own;
    const noted = [ADDED];
    const lost = new Set();
    for (let round = 1; round <= kills; round += 1) {
      noted.push(`made-up note ${round}`);
      await phone.note(noted.at(-1));
      await phone.kept();
      await sleep(delayMs);
      await killAndOpen(own);
      await comesBack(phone, noted.at(-1)).catch(() => {});
      const words = new Set(await phone.journal());
      noted.filter((one) => !words.has(one)).forEach((one) => lost.add(one));
    }
    const fault = delayMs === 0 ? 'browser killed at once after "Kept."' : 'browser killed 100 ms after "Kept."';
    tell({ fault, engine, trials: kills, lost: [...lost], said: 'Kept.' });
  });

for (const engine of Object.keys(KILLABLE)) {
  killedAfterKept(engine, PROVEN ?? KILLS[engine], 0, 'as soon as');
}
for (const engine of Object.keys(KILLS_WHILE_KEEPING)) {
  killedAfterKept(engine, PROVEN ?? KILLS[engine], 100, '100 ms after');
}

// Resolves as soon as the page shows that state of keeping, or any with `null`.
const shows = (phone, state) =>
  phone.run(
    (wanted) =>
      new Promise((done) => {
        const line = document.querySelector('.status-line p');
        const watch = new MutationObserver(() => {
          if (wanted === null || line.dataset.kept === wanted) {
            watch.disconnect();
            done(true);
          }
        });
        watch.observe(line, { attributeFilter: ['data-kept'] });
      }),
    state,
  );

for (const [engine, few] of Object.entries(KILLS_WHILE_KEEPING)) {
  const kills = PROVEN ?? few;
  test(`${engine}: killed while it says "Keeping", it opens as before or after that act, ${kills} times`, async ({ bench }) => {
    test.setTimeout(LONGEST_MS);
    const own = await killable(bench, engine);
    const { phone } = own;
    const safe = [ADDED];
    const lost = new Set();
    const ends = { before: 0, after: 0, whileKeeping: 0 };
    for (let round = 1; round <= kills; round += 1) {
      const text = `made-up note ${round}`;
      await phone.typeNote(text);
      let isKept = false;
      const asked = [shows(phone, null), shows(phone, 'Kept').then(() => (isKept = true))].map((one) => one.catch(() => {}));
      const isTapped = phone.door.click(await phone.keepNote()).catch(() => {});
      await asked[0];
      // From the tap on, a little later each round: both before and after the copies have answered.
      await sleep(((round - 1) * 7) % 60);
      const wasShownAsKept = isKept;
      await phone.door.kill();
      await Promise.all([isTapped, ...asked]);
      ends.whileKeeping += Number(!wasShownAsKept);
      await phone.door.open();
      await phone.open(own.site.url);
      const wanted = wasShownAsKept ? [...safe, text] : safe;
      await comesBack(phone, wanted.at(-1)).catch(() => {});
      const words = await phone.journal();
      wanted.filter((one) => !words.includes(one)).forEach((one) => lost.add(one));
      const isThere = words.includes(text);
      ends[isThere ? 'after' : 'before'] += 1;
      if (isThere) {
        safe.push(text);
      }
      assert.deepEqual([...words].sort(), [...safe].sort(), 'nothing but whole acts');
    }
    assert.ok(ends.whileKeeping > 0, 'at least one kill came before "Kept"');
    tell({
      fault: 'browser killed while it says "Keeping…"',
      engine,
      trials: kills,
      lost: [...lost],
      said: 'Keeping…',
      note: `${ends.whileKeeping} killed before "Kept.", ${ends.after} acts there afterwards, ${ends.before} not`,
    });
  });
}
