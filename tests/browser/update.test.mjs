// From one version to the next: the new one waits, is asked for, and the page is loaded again once.
import assert from 'node:assert/strict';
import { appendFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeWorker } from '../../.build/precache.mjs';
import { test } from './fixtures.mjs';
import { cacheNames, offlineReady, started, tell, until } from './harness.mjs';
import { go, kept, missing, typeInChick } from './owner.mjs';

// The same app, told apart by a mark on its page, with the list that a build writes.
const nextBuild = (bench) => {
  const folder = bench.copyOfBuild();
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<html ', '<html data-build="2" '));
  writeWorker(folder);
  return folder;
};

const isSecondBuild = (page) => page.evaluate(() => document.documentElement.dataset.build === '2');
const loads = (page) => page.evaluate(() => Number(sessionStorage.getItem('loads')));
const checkForUpdate = (page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update().catch(() => {});
  });
const isOffered = (page) => page.evaluate(() => window.offers > 0 && typeof window.perchlightUpdate?.apply === 'function');

const openTab = async (context, site) => {
  const page = await context.newPage();
  await page.addInitScript(() => {
    sessionStorage.setItem('loads', Number(sessionStorage.getItem('loads')) + 1);
    window.offers = 0;
    window.addEventListener('perchlight-update-ready', () => {
      window.offers += 1;
    });
  });
  await page.goto(site.url);
  await started(page);
  await offlineReady(page);
  return page;
};

const open = async (bench) => {
  const site = await bench.site();
  const { context } = await bench.phone(site);
  return { site, context, page: await openTab(context, site) };
};

test('a new version waits, is offered once, and comes with one reload after consent', async ({ bench }) => {
  const { site, page } = await open(bench);
  assert.equal(await page.evaluate(() => window.offers), 0, 'a first visit offers nothing');
  assert.equal(await page.evaluate(() => window.perchlightUpdate), undefined);
  const [before] = await cacheNames(page);

  site.folder = nextBuild(bench);
  await checkForUpdate(page);
  await until('the update is offered', () => isOffered(page));
  assert.equal(await loads(page), 1, 'nothing is loaded again by itself');
  assert.equal(await page.evaluate(() => window.offers), 1);

  await page.reload();
  await started(page);
  assert.equal(await isSecondBuild(page), false, 'without consent the old version stays');
  await until('it is offered again after a reload', () => isOffered(page));

  // Tapped twice, as an impatient thumb does.
  await page.evaluate(() => {
    window.perchlightUpdate.apply();
    window.perchlightUpdate.apply();
  });
  await until('the page is loaded again', async () => (await loads(page).catch(() => 0)) === 3);
  await started(page);
  assert.equal(await isSecondBuild(page), true);
  await page.waitForTimeout(1500);
  assert.equal(await loads(page), 3, 'loaded again exactly once');
  const after = await cacheNames(page);
  assert.equal(after.length, 1);
  assert.notEqual(after[0], before);
});

test('another tab is left alone when one tab changes to the new version', async ({ bench }) => {
  const { site, context, page } = await open(bench);
  const other = await openTab(context, site);
  site.folder = nextBuild(bench);
  await checkForUpdate(page);
  await until('both tabs offer it', async () => (await isOffered(page)) && isOffered(other));
  await page.evaluate(() => window.perchlightUpdate.apply());
  await until('the first tab has changed', () => isSecondBuild(page).catch(() => false));
  await other.waitForTimeout(1000);
  assert.equal(await loads(other), 1, 'what is typed there is not lost');
  await other.evaluate(() => window.perchlightUpdate.apply());
  await until('the other tab has changed when asked', () => isSecondBuild(other).catch(() => false));
  assert.equal(await loads(other), 2);
});

test('an update that comes while something is half typed waits, and takes nothing away', async ({ bench }) => {
  const { site, page } = await open(bench);
  await typeInChick(page);
  await kept(page);
  await go(page, '#/weigh');
  await page.locator('#weight').fill('98');
  site.folder = nextBuild(bench);
  await checkForUpdate(page);
  await until('the update is offered', () => isOffered(page));
  const notice = page.locator('.banner[data-kind="update"]');
  assert.equal(await notice.count(), 0, 'nothing is offered over an open form');
  assert.equal(await page.locator('#weight').inputValue(), '98');
  await page.locator('#weight').fill('1019');
  await page.getByRole('radio', { name: 'empty', exact: true }).check();
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await kept(page);
  await go(page, '#/journal');
  await page.locator('details.group summary').click();
  await page.locator('#note').fill('half a no');
  assert.equal(await notice.count(), 0, 'nor over a remark that is being typed');
  await page.locator('#note').fill('half a note made whole');
  await page.locator('details.group').getByRole('button', { name: 'Keep' }).click();
  await kept(page);
  await go(page, '#/now');
  await notice.waitFor();
  const said = await notice.locator('p').innerText();
  await notice.getByRole('button', { name: 'Reload now' }).click();
  await until('the page has changed', () => isSecondBuild(page).catch(() => false));
  await started(page);
  const lost = await missing(page, ['Chick added: Ember', 'half a note made whole']);
  assert.equal(await page.locator('.journal-line', { hasText: '1019' }).count(), 1);
  tell({ fault: 'update of the app with an entry half typed', trials: 1, lost, said });
});

test('an update deletes its own old files and nobody else\'s', async ({ bench }) => {
  const { site, page } = await open(bench);
  const [own] = await cacheNames(page);
  const others = ['somebody-elses', 'perchlight-/another/path/@1234', 'perchlightly'];
  const left = `${own.slice(0, own.indexOf('@'))}@of-an-older-version`;
  await page.evaluate((names) => Promise.all(names.map((name) => caches.open(name))), [...others, left]);
  site.folder = nextBuild(bench);
  await checkForUpdate(page);
  await until('the update is offered', () => isOffered(page));
  await page.evaluate(() => window.perchlightUpdate.apply());
  await until('the page has changed', () => isSecondBuild(page).catch(() => false));
  await until('the old files are gone', async () => !(await cacheNames(page)).includes(own));
  const names = await cacheNames(page);
  assert.deepEqual(others.filter((name) => !names.includes(name)), []);
  assert.equal(names.includes(left), false);
  assert.equal(names.length, others.length + 1);
});

const broken = {
  'a file that is not what the build wrote': (folder) => appendFileSync(join(folder, 'theme.js'), '\n// cut short on the way\n'),
  'a file that is missing': (folder) => rmSync(join(folder, 'icons/icon-512.png')),
};
for (const [what, damage] of Object.entries(broken)) {
  test(`an update with ${what} changes nothing`, async ({ bench }) => {
    const { site, page } = await open(bench);
    bench.allow(/integrity/, /404/);
    const before = await cacheNames(page);
    site.folder = nextBuild(bench);
    damage(site.folder);
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      window.ends = [];
      registration.addEventListener('updatefound', () => {
        const worker = registration.installing;
        worker.addEventListener('statechange', () => window.ends.push(worker.state));
      });
      await registration.update().catch(() => {});
    });
    await until('the installation has ended', () => page.evaluate(() => window.ends.includes('redundant')));
    assert.equal(await isOffered(page), false);
    assert.deepEqual(await cacheNames(page), before, 'no half of a version is left behind');
    await site.stop();
    await page.reload();
    await started(page);
    assert.equal(await isSecondBuild(page), false);
  });
}
