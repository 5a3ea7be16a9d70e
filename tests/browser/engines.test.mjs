// The main job, failing storage, an update and kills in three engines, with their own clock and storage.
// What Chromium is asked elsewhere with a clock of the test's is not asked of it again here.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { writeWorker } from '../../.build/precache.mjs';
import { ENGINES, EnginePhone, bySelector, daysAgo } from './engines.mjs';
import { test } from './fixtures.mjs';
import { tell, until } from './harness.mjs';
import { CHICK, clearFirst, clearSecond } from './owner.mjs';
import { Script } from './script.mjs';

// `make prove` asks for 50.
const KILLS = Number(process.env.KILLS ?? 2);
const ADDED = `Chick added: ${CHICK.name}`;
const BESIDE_CHROMIUM = ['Firefox', 'WebKitGTK'];

const startedBefore = new Set();

// A phone that is on. An engine that cannot be started here at all is told of and left out.
const phoneOf = async (bench, engine, site) => {
  const door = new ENGINES[engine](bench, site);
  bench.closers.unshift(() => door.kill());
  await door.open().catch((error) => {
    test.skip(!startedBefore.has(engine), `${engine} cannot be started here: ${error.message}`);
    throw error;
  });
  startedBefore.add(engine);
  return new EnginePhone(door);
};

const typeInChick = async (phone) => {
  await phone.tap("I'll type it in");
  await phone.press('the way to every field', bySelector, 'main a[href="#/whole-plan"]');
  await phone.fill('#species', CHICK.species);
  await phone.type('#name', CHICK.name);
  // Thirteen weeks old, weighed today.
  await phone.fill('#hatched', daysAgo(92));
  await phone.type('#handover-weight', CHICK.weight);
  await phone.fill('#handover-day', daysAgo(0));
  for (const [row, time, volume] of CHICK.feeds) {
    await phone.fill(`#time-${row}`, time);
    await phone.fill(`#volume-${row}`, volume);
  }
  await phone.type('#breeder-name', CHICK.breeder[0]);
  await phone.type('#breeder-number', CHICK.breeder[1]);
  // A tap right behind the last key is sometimes lost in Firefox on a busy machine; then it is made again, as a person would.
  await phone.run(() => {
    window.wasSent = false;
    addEventListener('submit', () => {
      window.wasSent = true;
    }, true);
    return true;
  });
  await phone.wait('the plan is sent', async () => {
    await phone.tap('Start with these');
    await sleep(500);
    return phone.run(() => window.wasSent);
  });
  await phone.kept();
};

const takeInFile = async (phone, file, button) => {
  await phone.go('#/take-in', '#file');
  await phone.choose('#file', file);
  await phone.tap(button);
};

for (const engine of Object.keys(ENGINES)) {
  test(`${engine}: card in, fed, weighed, all there without the server, report and backup out, backup in, help`, async ({ bench }) => {
    test.setTimeout(300_000);
    const site = await bench.site();
    const breeder = await phoneOf(bench, engine, site);
    await breeder.open(site.url);
    await typeInChick(breeder);
    await breeder.go('#/handover', 'details.group');
    await breeder.tap('Handover card');
    const card = await breeder.saved('Card as a file to print');

    const owner = await phoneOf(bench, engine, site);
    await owner.open(site.url);
    await owner.tap('I have read this');
    await takeInFile(owner, card, 'Take it');
    await owner.sees(/Midday feed.*40 ml/);
    await owner.press('the way to note a feed', bySelector, '.dock a[href^="#/log"]');
    await owner.tap('Done');
    await owner.sees(/Midday feed, 40 ml/);
    await owner.go('#/weigh', '#weight');
    await owner.type('#weight', '1012');
    await owner.tap('empty');
    await owner.tap('Keep');
    await owner.kept();
    await owner.offlineReady();
    await site.stop();
    await owner.reload();
    // Of one second either may stand first.
    const lines = [ADDED, 'Plan taken', 'Midday feed: 40 ml', '1012 g, crop empty'].sort();
    assert.deepEqual((await owner.journal()).sort(), lines);

    await owner.go('#/handover', '#backup');
    const report = readFileSync(await owner.saved('Report for the breeder'), 'utf8');
    // (1040 - 1012) / 1040 = 2.69 %
    assert.match(report, /1012/);
    assert.match(report, /2\.7/);
    // There is no share sheet on these: where the file went is said.
    await owner.sees(/Saved as perchlight-ember-report/);
    const backup = await owner.saved('Save a backup file');
    await owner.choose('#backup-check', backup);
    await owner.sees(/holds 4 entries.*everything on this phone/);
    await owner.go('#/settings');
    const isPromised = await owner.run(() => navigator.storage?.persisted?.() ?? false);
    await owner.sees(isPromised ? /The browser will not clear it by itself/ : /The browser may clear it when space is short/);
    await owner.go('#/wrong', 'details.sign-group');
    await owner.run(() => document.querySelectorAll('details.sign-group').forEach((group) => {
      group.open = true;
    }));
    await owner.tap('Cold');
    await owner.has('.answer[data-level="emergency"]');
    assert.equal(await owner.run(() => document.querySelector('a.call').getAttribute('href')), 'tel:+15550100');

    await takeInFile(breeder, backup, 'Import');
    await breeder.kept();
    assert.deepEqual((await breeder.journal()).sort(), lines);
  });
}

const withChick = async (phone) => {
  const today = daysAgo(0);
  const plan = { name: CHICK.name, hatched: daysAgo(92), reference: { g10: 10_400, day: today } };
  await phone.go('#/take-in', '#paste');
  await phone.fill('#paste', new Script().added(`${daysAgo(1)}T00:00`, plan).backup());
  await phone.tap('Next');
  await phone.tap('Import');
  await phone.has('.top-bar__name');
};

// A build whose page does something before everything else.
const buildWith = (bench, change) => {
  const folder = bench.copyOfBuild();
  change(folder);
  writeWorker(folder);
  return folder;
};
const startingWith = (bench, fault) =>
  buildWith(bench, (folder) => {
    const first = join(folder, 'theme.js');
    writeFileSync(first, `(${fault})();\n${readFileSync(first, 'utf8')}`);
  });

const blockFirst = () => {
  Object.defineProperty(window, 'localStorage', {
    get() {
      throw new DOMException('blocked', 'SecurityError');
    },
  });
};
const hideSecond = () => Object.defineProperty(window, 'indexedDB', { get: () => undefined });
const silenceSecond = () => {
  IDBFactory.prototype.open = () => new EventTarget();
};
const fillFirst = () => {
  let text = '';
  for (let length = 1 << 22; length >= 1; length >>= 1) {
    try {
      localStorage.setItem('filler', text + 'x'.repeat(length));
      text += 'x'.repeat(length);
    } catch {
      // Half as much is tried next.
    }
  }
};
const fillBoth = `() => {
  (${fillFirst})();
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('full', 'QuotaExceededError');
  };
}`;
const ONE_COPY = /Saved in this browser, but one of its two copies failed/;
// What fails at the start or afterwards, what the screen says, and whether the remark outlives the page.
const FAULTS = {
  'localStorage forbidden': { first: blockFirst, said: ONE_COPY, isKept: true },
  'IndexedDB missing': { first: hideSecond, said: ONE_COPY, isKept: true },
  'IndexedDB never answers': { first: silenceSecond, said: ONE_COPY, isKept: true },
  'both forbidden': {
    first: `() => { (${blockFirst})(); (${hideSecond})(); }`,
    said: /NOT saved: this browser does not let the app store anything/,
    isKept: false,
  },
  'localStorage full': { later: fillFirst, said: ONE_COPY, isKept: true },
  'both full': { later: fillBoth, said: /NOT saved: this phone's storage is full/, isKept: false },
  'localStorage cleared': { later: clearFirst, said: /Kept\./, isKept: true },
  'IndexedDB cleared': { later: clearSecond, said: /Kept\./, isKept: true },
};

// On a busy machine a database may open later than the app waits for it. It says so then, and opens it again with a
// later act, after ten seconds (src/store/save_state.rs), or a later start.
const isSoon = (ask) => until('it comes', ask, 12_000).then(() => true, () => false);
const comesBack = (phone, text) =>
  phone.wait(`${text} is in the journal`, async () => {
    await phone.run(() => {
      location.hash = '#/journal';
    });
    return (await isSoon(async () => (await phone.words()).includes(text))) || phone.reload().then(() => false);
  });

for (const engine of BESIDE_CHROMIUM) {
  test(`${engine}: what is shown as kept outlives every fault of the storage, and the screen says what is so`, async ({ bench }) => {
    test.setTimeout(600_000);
    const phone = await phoneOf(bench, engine);
    for (const [fault, { first = () => {}, later = () => {}, said, isKept }] of Object.entries(FAULTS)) {
      await test.step(fault, async () => {
        // Each at a port, that is with a storage, of its own.
        const site = await bench.site({ folder: startingWith(bench, first) });
        await phone.open(site.url);
        await withChick(phone);
        await phone.run(later);
        await phone.wait(`${said} on screen`, async () => {
          await phone.note('noted with the fault');
          return isSoon(async () => said.test(await phone.words()));
        });
        if (isKept) {
          await phone.reload();
          await comesBack(phone, 'noted with the fault');
          assert.ok((await phone.journal()).includes(ADDED));
        }
      });
    }
  });

  test(`${engine}: a new version waits, is offered, and takes nothing away`, async ({ bench }) => {
    test.setTimeout(180_000);
    const site = await bench.site();
    const phone = await phoneOf(bench, engine, site);
    await phone.open(site.url);
    await withChick(phone);
    await phone.offlineReady();
    site.folder = buildWith(bench, (folder) => {
      const page = join(folder, 'index.html');
      writeFileSync(page, readFileSync(page, 'utf8').replace('<html ', '<html data-build="2" '));
    });
    await phone.go('#/weigh', '#weight');
    await phone.run(() => navigator.serviceWorker.ready.then((registration) => registration.update()).then(() => {}));
    await phone.wait('the update is there', () => phone.run(() => window.perchlightUpdate !== undefined));
    assert.equal(await phone.run(() => document.querySelector('.banner[data-kind="update"]')), null, 'not over a form');
    await phone.go('#/now', '.banner[data-kind="update"]');
    await phone.tap('Reload now');
    await phone.has('html[data-build="2"][data-started="true"]');
    assert.deepEqual(await phone.journal(), [ADDED]);
  });
}

test(`Firefox: killed as soon as it says "kept", it has lost nothing, ${KILLS} times`, async ({ bench }) => {
  test.setTimeout(1_200_000);
  const site = await bench.site();
  const phone = await phoneOf(bench, 'Firefox', site);
  await phone.open(site.url);
  await withChick(phone);
  const noted = [ADDED];
  const lost = new Set();
  for (let round = 1; round <= KILLS; round += 1) {
    const text = `made-up note ${round}`;
    await phone.note(text);
    await phone.kept();
    noted.push(text);
    await phone.door.kill();
    await phone.door.open();
    await phone.open(site.url);
    await comesBack(phone, text).catch(() => {});
    const words = new Set(await phone.journal());
    noted.filter((one) => !words.has(one)).forEach((one) => lost.add(one));
  }
  tell({ fault: 'Firefox killed at once after "Kept."', trials: KILLS, lost: [...lost], said: 'Kept.' });
});
