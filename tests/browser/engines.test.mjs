// The main job, failing storage and an update in three engines, with their own clock and storage.
// What Chromium is asked elsewhere with a clock of the test's is not asked of it again here.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeWorker } from '../../.build/precache.mjs';
import { ENGINES, bySelector, comesBack, daysAgo, isSoon, phoneOf, withChick } from './engines.mjs';
import { SILENT, blockBoth, blockFirst, fillBoth, fillFirst, hideSecond } from './faults.mjs';
import { test } from './fixtures.mjs';
import { tell } from './harness.mjs';
import { CHICK, clearFirst, clearSecond } from './owner.mjs';

const ADDED = `Chick added: ${CHICK.name}`;
// Any picture will do for a photo.
const PICTURE = fileURLToPath(new URL('../../public/screenshots/now.png', import.meta.url));
const BESIDE_CHROMIUM = ['Firefox', 'WebKitGTK'];

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
  await phone.tap('Start with these');
  await phone.has('.next-feed, .top-bar__name');
};

const takeInFile = async (phone, file, button) => {
  await phone.go('#/take-in', '#file');
  await phone.choose('#file', file);
  await phone.tap(button);
};

for (const engine of Object.keys(ENGINES)) {
  test(`${engine}: card in, fed, weighed, all there without the server, report and backup out, backup in, help, photo`, async ({ bench }) => {
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
    await owner.go('#/vet', '#photo-choose');
    await owner.choose('#photo-choose', PICTURE);
    await owner.sees(/Photos kept: 1 of 1\./);
    await owner.reload();
    await owner.wait('the photo is seen', () => owner.run(() => document.querySelector('.photo-list img')?.naturalWidth > 0));

    await takeInFile(breeder, backup, 'Import');
    await breeder.kept();
    assert.deepEqual((await breeder.journal()).sort(), lines);
  });
}

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

const REMARK = 'noted with the fault';
const ONE_COPY = /Saved in this browser, but one of its two copies failed/;
// What fails at the start, each in a storage of its own, or afterwards; what the screen says; what is there afterwards.
const FAULTS = {
  'first copy blocked at the start': { first: [blockFirst], said: ONE_COPY },
  'IndexedDB missing': { first: [hideSecond], said: ONE_COPY },
  'IndexedDB never answers: its opening, a reading, a writing': { first: Object.values(SILENT), said: ONE_COPY },
  'both copies blocked at the start': {
    first: [blockBoth],
    said: /NOT saved: this browser does not let the app store anything/,
    keeps: [],
  },
  'quota of the first copy reached': { later: fillFirst, said: ONE_COPY },
  'quota of both copies reached': { later: fillBoth, said: /NOT saved: this phone's storage is full/, keeps: [ADDED] },
  'localStorage cleared': { later: clearFirst, said: /Kept\./ },
  'IndexedDB cleared': { later: clearSecond, said: /Kept\./ },
};

for (const engine of BESIDE_CHROMIUM) {
  test(`${engine}: what is shown as kept outlives every fault of the storage, and the screen says what is so`, async ({ bench }) => {
    test.setTimeout(600_000);
    const phone = await phoneOf(bench, engine);
    for (const [fault, { first = [() => {}], later = () => {}, said, keeps = [ADDED, REMARK] }] of Object.entries(FAULTS)) {
      const lost = [];
      let words = '';
      for (const [trial, prepare] of first.entries()) {
        await test.step(`${fault}, ${trial + 1}`, async () => {
          // At a port, that is with a storage, of its own.
          const site = await bench.site({ folder: startingWith(bench, prepare) });
          await phone.open(site.url);
          await withChick(phone);
          await phone.run(later);
          await phone.wait(`${said} on screen`, async () => {
            await phone.note(REMARK);
            return isSoon(async () => said.test((words = await phone.words())));
          });
          await phone.reload();
          if (keeps.length > 0) {
            await comesBack(phone, keeps.at(-1)).catch(() => {});
            const there = await phone.journal();
            lost.push(...keeps.filter((one) => !there.includes(one)));
          }
        });
      }
      tell({ fault, engine, trials: first.length, lost, said: words.match(said)[0] });
    }
  });

  test(`${engine}: a new version waits while something is half typed, is offered, and takes nothing away`, async ({ bench }) => {
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
    await phone.type('#weight', '98');
    await phone.run(() => navigator.serviceWorker.ready.then((registration) => registration.update()).then(() => {}));
    await phone.wait('the update is there', () => phone.run(() => window.perchlightUpdate !== undefined));
    assert.equal(await phone.run(() => document.querySelector('.banner[data-kind="update"]')), null, 'not over a form');
    assert.equal(await phone.run(() => document.querySelector('#weight').value), '98');
    await phone.type('#weight', '1019');
    await phone.tap('empty');
    await phone.tap('Keep');
    await phone.has('.weigh__kept');
    await phone.go('#/now', '.banner[data-kind="update"]');
    const [said] = await phone.sees(/A new version is ready\./);
    await phone.tap('Reload now');
    await phone.has('html[data-build="2"][data-started="true"]');
    await comesBack(phone, '1019 g').catch(() => {});
    const there = await phone.journal();
    const lost = [ADDED, '1019 g, crop empty'].filter((one) => !there.includes(one));
    tell({ fault: 'update of the app with an entry half typed', engine, trials: 1, lost, said });
  });
}
