// What a breeder does on her screens, one function an act. All chicks and people here are made up.
import assert from 'node:assert/strict';
import { copied, fillPlan, go, kept, openApp, press, words } from './owner.mjs';
import { Script, clockAt } from './script.mjs';

export const phone = async (bench, site, iso, options) => {
  const { context, page } = await bench.phone(site, options);
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: site.origin });
  await clockAt(page, iso);
  return page;
};

// Through the door to the list, with her own words typed once.
export const asBreeder = async (page, site) => {
  await openApp(page, site);
  await page.getByRole('link', { name: /I am a breeder/ }).click();
  await page.locator('#own-name').fill('Ana');
  await page.locator('#own-number').fill('+1 555 0100');
  await page.locator('#own-hours').fill('8 to 22');
  await page.locator('#second-name').fill('Bo');
  await page.locator('#second-number').fill('+1 555 0101');
  await page.locator('#after-refusal').fill('Wait an hour, then try again');
  await page.locator('#ask-before-drop').check();
  await page.locator('#own-note').fill('Wash your hands first.');
  await press(page, 'Save');
  await page.locator('.chicks').waitFor();
};

// The first card of a species, typed in full: it is the template of the next ones.
export const firstCard = async (page, chick) => {
  await page.locator('.dock').getByRole('link', { name: 'New card' }).click();
  await page.locator('main a.button--main').click();
  assert.equal(await page.locator('#breeder-number').inputValue(), '+1 555 0100', 'her own number is there');
  await fillPlan(page, { ...chick, breeder: ['Ana', '+1 555 0100'] });
  await page.locator('summary', { hasText: 'More of the plan' }).click();
  await page.locator('#ring').fill('GB 1');
  await page.locator('#note-for-chick').fill('She likes to be held in a towel.');
  await press(page, 'Start with these');
  await page.locator('.chosen-chick').waitFor();
};

export const nextCard = async (page, { name, ring, weight, hatched, owner, number }) => {
  await go(page, '#/chicks');
  await page.locator('.dock').getByRole('link', { name: 'New card' }).click();
  await page.locator('#name').fill(name);
  await page.locator('#ring').fill(ring);
  await page.locator('#handover-weight').fill(String(weight));
  await page.locator('#hatched').fill(hatched);
  if (owner !== undefined) {
    await page.locator('summary', { hasText: 'Who takes it?' }).click();
    await page.locator('#owner').fill(owner);
    await page.locator('#owner-number').fill(number);
  }
  await press(page, 'Make the card');
  await page.locator('.chosen-chick').waitFor();
};

export const cardLink = async (page) => {
  await press(page, 'Send card');
  const all = page.getByRole('button', { name: 'I know, send it so' });
  if ((await all.count()) > 0) {
    await all.click();
  }
  return copied(page, 'Copy card as link');
};

export const row = (page, name) => page.locator(`[data-chick="${name}"]`);
export const openChick = async (page, name) => {
  await go(page, '#/chicks');
  await row(page, name).locator('button').first().click();
  await page.locator('.chosen-chick').waitFor();
};
export const state = async (page, name) => {
  await go(page, '#/chicks');
  return words(row(page, name).locator('[data-state]'));
};

// The ids of the chicks on a phone, by their rings.
export const ids = (page) =>
  page.evaluate(() => {
    const found = {};
    const lines = Object.values(localStorage).join('\n');
    for (const [, chick, ring] of lines.matchAll(/"chick":"([^"]+)"[^\n]*?"did":"chick-added"[^\n]*?"ring":"([^"]*)"/g)) {
      found[ring] = chick;
    }
    return found;
  });

export const scripted = (number, chick) => {
  const script = new Script(number);
  script.chick = chick;
  return script;
};

const day = (date) => `2026-${date}`;

// Weighed and fed in full on each of these days of a month, as the plan of CHICK says.
export const wellFed = (script, month, from, to, grams = 1040) => {
  for (let date = from; date <= to; date += 1) {
    const at = day(`${month}-${String(date).padStart(2, '0')}`);
    script.weighed(`${at}T06:45`, grams).fed(`${at}T07:05`, 'morning', 60).fed(`${at}T14:05`, 'midday', 40).fed(`${at}T21:05`, 'bedtime', 60);
  }
  return script;
};

export const importFiles = async (page, scripts) => {
  await go(page, '#/reports');
  const files = scripts.map((script, place) => ({ name: `report-${place}.json`, mimeType: 'application/json', buffer: Buffer.from(script.backup()) }));
  await page.locator('#files').setInputFiles(files);
  const preview = page.locator('main section.question', { hasText: `${scripts.length} texts read` });
  await preview.waitFor();
  assert.equal(await preview.locator('.fault').count(), 0, await preview.innerText());
  await press(page, 'Import them all');
  await page.locator('.chicks').waitFor();
  await kept(page);
};
