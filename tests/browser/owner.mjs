// What an owner does on the screens, one function an act. All chicks here are made up.
import assert from 'node:assert/strict';
import { clock, started, until } from './harness.mjs';

export const CHICK = {
  species: 'Green-winged macaw',
  name: 'Ember',
  hatched: '2026-08-24',
  weight: '1040',
  weighed: '2026-11-24',
  feeds: [
    ['2', '07:00', '60'],
    ['3', '14:00', '40'],
    ['6', '21:00', '60'],
  ],
  breeder: ['Example breeder', '+1 555 0100'],
};

// Ten minutes before the bedtime feed of CHICK.
export const EVENING = '2026-11-24T20:50:00Z';

// A phone in the evening whose clipboard may be read.
export const eveningPhone = async (bench, site, options = {}) => {
  const { context, page } = await bench.phone(site, options);
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: site.origin });
  await clock(page, EVENING);
  return page;
};

// Words on screen with plain spaces.
export const plain = (text) => text.replaceAll('\u00a0', ' ').trim();
export const words = async (locator) => plain(await locator.innerText());

// Waits for the screen or step of that name.
export const step = (page, name) => page.locator('main h1', { hasText: name }).waitFor();

// Presses the button of exactly that name.
export const press = (page, name) => page.getByRole('button', { name, exact: true }).click();

// What stands on the clipboard after a tap on that button.
export const copied = async (page, button) => {
  await press(page, button);
  await page.getByRole('button', { name: 'Copied.' }).first().waitFor();
  return page.evaluate(() => navigator.clipboard.readText());
};

// Opens the app and waits until it is on screen.
export const openApp = async (page, site, hash = '') => {
  await page.goto(`${site.url}${hash}`);
  await started(page);
};

// Opens every group of signs on the page of help.
export const openSigns = async (page) => {
  await go(page, '#/wrong');
  await page.locator('details.sign-group').evaluateAll((groups) => {
    for (const group of groups) {
      group.open = true;
    }
  });
};

// Opens the handover card of the chick on screen.
export const openCard = async (page) => {
  await go(page, '#/handover');
  await page.locator('details.group > summary', { hasText: 'Handover card' }).click();
};

export const go = async (page, hash) => {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, hash);
  await page.locator('main h1').first().waitFor();
};

export const fillPlan = async (page, chick = CHICK) => {
  await page.locator('#species').selectOption({ label: chick.species });
  await page.locator('#name').fill(chick.name);
  await page.locator('#hatched').fill(chick.hatched);
  await page.locator('#handover-weight').fill(chick.weight);
  await page.locator('#handover-day').fill(chick.weighed);
  for (const [row, time, volume] of chick.feeds) {
    await page.locator(`#time-${row}`).fill(time);
    await page.locator(`#volume-${row}`).fill(volume);
  }
  await page.locator('#breeder-name').fill(chick.breeder[0]);
  await page.locator('#breeder-number').fill(chick.breeder[1]);
};

// Opens the form of every field of a new chick's plan.
export const openWholePlan = async (page) => {
  await page.getByRole('link', { name: "I'll type it in" }).click();
  await page.locator('main a[href="#/whole-plan"]').click();
};

export const typeInChick = async (page, chick = CHICK) => {
  await openWholePlan(page);
  await fillPlan(page, chick);
  await page.getByRole('button', { name: 'Start with these' }).click();
  const home = page.locator('[data-ask="home"]');
  await home.getByRole('button', { name: 'Not yet', exact: true }).click();
  await home.waitFor({ state: 'detached' });
};

export const keptState = (page) => page.locator('.status-line p').getAttribute('data-kept');

// Waits until both copies hold everything.
export const kept = (page) => until('both copies have it', async () => (await keptState(page)) === 'Kept');

// From the first screen in two taps.
export const logNextFeed = async (page) => {
  await page.locator('.dock a[href^="#/log"]').click();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
};

export const weigh = async (page, grams, crop = 'empty') => {
  // From elsewhere: what the last weight means may still stand there.
  await go(page, '#/now');
  await go(page, '#/weigh');
  await page.locator('#weight').fill(String(grams));
  await page.getByRole('radio', { name: crop, exact: true }).check();
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
};

// A weight and the second one that is asked for before it calls anybody.
export const weighTwice = async (page, grams) => {
  await weigh(page, grams);
  await weigh(page, grams);
};

export const journalWords = async (page) => {
  await go(page, '#/journal');
  await page.locator('.journal-line').first().waitFor();
  return page.locator('.journal-line__words').allInnerTexts();
};

export const faultsOnScreen = async (page) => {
  const texts = await page.locator('.fault').allInnerTexts();
  return texts.filter((text) => text.trim() !== '');
};

export const hasFault = async (page, words) => {
  const faults = await faultsOnScreen(page);
  assert.ok(faults.some((fault) => words.test(fault)), `${words} among ${JSON.stringify(faults)}`);
};

// Types a remark and taps on Keep, without waiting for what comes of it.
export const noteAtOnce = async (page, text) => {
  await go(page, '#/journal');
  const form = page.locator('details.group', { has: page.locator('#note') });
  if (!(await form.evaluate((details) => details.open))) {
    await form.locator('summary').click();
  }
  await page.locator('#note').fill(text);
  await form.getByRole('button', { name: 'Keep' }).click();
};

// Types a remark and waits until it is taken into the journal.
export const noteDown = async (page, text) => {
  await noteAtOnce(page, text);
  await page.locator('.status-line', { hasText: text }).waitFor();
};

// Types a remark and waits until both copies hold it.
export const note = async (page, text) => {
  await noteDown(page, text);
  await kept(page);
};

// Which of these remarks the journal does not hold, after the second copy had time to give what only it has.
export const missing = async (page, noted) => {
  let lost = noted;
  const end = Date.now() + 3_000;
  do {
    const words = (await journalWords(page)).map((line) => line.replaceAll('\u00a0', ' ').trim());
    lost = noted.filter((text) => !words.includes(text));
  } while (lost.length > 0 && Date.now() < end);
  return lost;
};

// The notice about storage that stands on every screen; waits for one with these words.
export const storageNotice = async (page, words) => {
  const banner = page.locator('.banner[data-kind="storage"] p', { hasText: words });
  await banner.waitFor({ timeout: 20_000 });
  return banner.innerText();
};

// How many entries the second copy holds.
export const countInSecond = (page) =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const request = indexedDB.open('perchlight');
        request.onsuccess = () => {
          const count = request.result.transaction('entries').objectStore('entries').count();
          count.onsuccess = () => {
            request.result.close();
            done(count.result);
          };
        };
      }),
  );

// Clear one of the two copies; run in the page.
export const clearFirst = () => localStorage.clear();
export const clearSecond = () =>
  new Promise((done, failed) => {
    const request = indexedDB.open('perchlight');
    request.onerror = () => failed(request.error);
    request.onsuccess = () => {
      const clear = request.result.transaction('entries', 'readwrite');
      clear.objectStore('entries').clear();
      clear.oncomplete = () => {
        request.result.close();
        done();
      };
    };
  });
