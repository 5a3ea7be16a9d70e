// A breeder's season: her door, the next card counted tap by tap, eight cards on her phone and two owners' phones,
// late, old and missing reports, namesakes, text that runs the other way, the table, and one CSV.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { asBreeder, cardLink, firstCard, ids, importFiles, nextCard, openChick, phone, row, scripted, state, wellFed } from './breeder.mjs';
import { test } from './fixtures.mjs';
import { axe, overflow, shot, started } from './harness.mjs';
import { CHICK, copied, go, kept, openApp, plain, press, words } from './owner.mjs';
import { clockAt } from './script.mjs';

// Before: 11 to 14 taps and 30 characters, counted by hand from the handover screen to the card's link.
const MOST_TAPS = 6;
const MOST_CHARACTERS = 25;

test('the next card of a clutch takes six taps and 25 characters, and no word of the last chick', async ({ bench }) => {
  const site = await bench.site();
  const page = await phone(bench, site, '2026-11-24T15:00:00Z');
  await asBreeder(page, site);
  await shot(page, 'breeder-empty');
  await firstCard(page, CHICK);
  await go(page, '#/chicks');
  await row(page, 'Ember').waitFor();

  let [taps, characters] = [0, 0];
  const tap = async (locator) => {
    taps += 1;
    await locator.tap();
  };
  const type = async (text) => {
    characters += text.length;
    await page.keyboard.type(text);
  };
  await tap(page.locator('.dock').getByRole('link', { name: 'New card' }));
  await tap(page.locator('#name'));
  await type('Flint');
  await tap(page.locator('#ring'));
  await type('GB 2');
  await tap(page.locator('#handover-weight'));
  await type('1015');
  // The days around the last hatching are one tap each; none is chosen by itself.
  assert.equal(await page.locator('#hatched').inputValue(), '');
  await tap(page.locator('[data-near]').getByRole('button', { name: '26 Aug' }));
  await shot(page, 'breeder-next-card');
  assert.deepEqual(await axe(page), []);
  await tap(page.getByRole('button', { name: 'Make the card' }));
  const send = page.getByRole('button', { name: 'Send card' });
  await send.waitFor();
  assert.ok(await send.evaluate((button) => button.getBoundingClientRect().bottom <= window.innerHeight));
  assert.ok(taps <= MOST_TAPS, `${taps} taps`);
  assert.ok(characters <= MOST_CHARACTERS, `${characters} characters`);
  await shot(page, 'breeder-card-made');

  // An owner's phone shows what travelled: the amounts and the standing words, nothing of Ember.
  const link = await cardLink(page);
  await shot(page, 'breeder-card-open');
  const owner = await phone(bench, site, '2026-11-24T15:05:00Z');
  await owner.goto(link);
  await started(owner);
  await press(owner, 'Take it');
  await owner.locator('.top-bar', { hasText: 'Flint' }).waitFor();
  await go(owner, '#/plan');
  const value = (id) => owner.locator(id).inputValue();
  assert.equal(await value('#ring'), 'GB 2');
  assert.equal(await value('#hatched'), '2026-08-26');
  assert.equal(await value('#handover-weight'), '1015');
  assert.deepEqual([await value('#volume-2'), await value('#volume-6')], ['60', '60']);
  assert.equal(await value('#note-for-chick'), '');
  assert.equal(await value('#note'), 'Wash your hands first.');
  assert.equal(await value('#breeder-number'), '+1 555 0100');
  assert.equal(await value('#second-number'), '+1 555 0101');
  assert.equal(await owner.locator('input[type=checkbox]').last().isChecked(), true);
  assert.match(await owner.locator('main').evaluate((main) => [...main.querySelectorAll('input, textarea')].map((field) => field.value).join('\n')), /Wait an hour, then try again/);
});

test('a season of eight cards: late, old and missing reports, one weaned, two of one name, one table', async ({ bench }) => {
  test.setTimeout(240_000);
  const site = await bench.site();
  const breeder = await phone(bench, site, '2026-10-01T08:00:00Z');
  await asBreeder(breeder, site);
  await firstCard(breeder, { ...CHICK, weighed: '2026-10-01' });
  const cards = [
    ['Flint', 'GB 2', '2026-08-26', 'Tom', '+1 555 0111'],
    ['Gale', 'GB 3', '2026-08-28', 'Lea', '+1 555 0112'],
    ['Haze', 'GB 4', '2026-07-01', 'Jon', '+1 555 0113'],
    ['Ruby', 'GB 5', '2026-08-29', 'Ines', '+1 555 0114'],
    ['Ruby', 'GB 6', '2026-08-30'],
    ['\u202eOnyx', 'GB 7', '2026-09-20'],
    ['\u05e8\u05d5\u05d1\u05d9', 'GB 8', '2026-09-21', 'Ben', '+1 555 0115'],
  ];
  for (const [name, ring, hatched, owner, number] of cards) {
    await nextCard(breeder, { name, ring, weight: 1040, hatched, owner, number });
  }
  await kept(breeder);
  await go(breeder, '#/chicks');
  await shot(breeder, 'breeder-with-me');
  const all = await words(breeder.locator('.chicks'));
  assert.match(all, /All \(8\).*With me \(3\).*Reserved \(5\)/s);
  // No countdown, no feed, no alarm for anybody, whichever chick is on screen.
  await go(breeder, '#/now');
  await breeder.locator('.chicks').waitFor();
  assert.equal(await breeder.locator('.next-feed, .lamp-band, .small-acts, [data-lit="true"]').count(), 0);

  // Mira takes Ember, Tom takes Flint.
  await openChick(breeder, 'Ember');
  const mira = await phone(bench, site, '2026-10-01T12:00:00Z');
  const tom = await phone(bench, site, '2026-10-01T12:00:00Z');
  const home = async (page, link) => {
    await page.goto(link);
    await started(page);
    await press(page, 'Take it');
    await press(page, 'Yes, it is home');
    await kept(page);
  };
  await home(mira, await cardLink(breeder));
  await openChick(breeder, 'Flint');
  await home(tom, await cardLink(breeder));
  const report = async (page) => {
    await go(page, '#/handover');
    return copied(page, 'Copy report as link');
  };
  const weighed = async (page, iso, grams) => {
    await clockAt(page, iso);
    await go(page, '#/weigh');
    await page.locator('#weight').fill(String(grams));
    await page.getByRole('radio', { name: 'empty', exact: true }).check();
    await press(page, 'Keep');
    await kept(page);
  };
  await weighed(mira, '2026-10-02T06:45:00Z', 1041);
  await weighed(tom, '2026-10-02T06:45:00Z', 1038);
  const [first, old] = [await report(mira), await report(tom)];

  // Both links in one text.
  await clockAt(breeder, '2026-10-02T09:00:00Z');
  await go(breeder, '#/reports');
  await breeder.locator('#paste').fill(`Mira:\n${first}\nTom:\n${old}\n${first}`);
  await press(breeder, 'Read them');
  const preview = breeder.locator('main section.question');
  await preview.waitFor();
  assert.match(await words(preview), /2 texts read/);
  await shot(breeder, 'breeder-reports');
  await press(breeder, 'Import them all');
  await breeder.locator('.chicks').waitFor();
  // Weighed that morning, and no food noted since it came home.
  assert.match(await state(breeder, 'Ember'), /^Watch\. Has it eaten\?/);

  // The others' owners report by files: Gale's fall silent on 12 November, Haze is weaned, a Ruby is well.
  const known = await ids(breeder);
  const arrived = (script) => script.note('2026-10-01T14:00', 'arrived');
  const gale = wellFed(wellFed(arrived(scripted(21, known['GB 3'])), '10', 2, 31), '11', 1, 12);
  const haze = wellFed(arrived(scripted(22, known['GB 4'])), '10', 2, 15);
  for (const slot of ['midday', 'morning', 'bedtime']) {
    haze.note('2026-10-16T08:00', 'feed-dropped', { slot, by_breeder: true });
  }
  haze.note('2026-10-17T09:00', 'drinking-seen');
  for (let date = 16; date <= 31; date += 1) {
    haze.weighed(`2026-10-${date}T06:45`, 1040);
  }
  for (let date = 1; date <= 19; date += 1) {
    haze.weighed(`2026-11-${String(date).padStart(2, '0')}T06:45`, 1040);
  }
  const well = wellFed(wellFed(arrived(scripted(23, known['GB 5'])), '10', 2, 31), '11', 1, 20);
  await clockAt(breeder, '2026-11-20T22:00:00Z');
  await importFiles(breeder, [gale, haze, well]);

  // Ember's report is late: nothing was heard since 2 October.
  assert.match(await state(breeder, 'Ember'), /^Not known\. No report for 49 days, the last on Fri 2 Oct: Watch\. Has it eaten/);
  assert.match(await state(breeder, 'Gale'), /^Not known\. No report for 8 days, the last on Thu 12 Nov$/);
  assert.match(await state(breeder, 'Haze'), /^Settled/);
  const groups = await breeder.locator('.chick-group h2').allInnerTexts();
  assert.deepEqual(groups, ['Need a call', 'With me', 'Reserved', 'Placed', 'Weaned']);
  // All three silent; of these the larger loss first: 2 g of 1,040 g, none, a gain of 1 g.
  const need = breeder.locator('.chick-group').first().locator('.chick-card');
  assert.deepEqual(await need.evaluateAll((cards) => cards.map((card) => card.dataset.chick)), ['Flint', 'Gale', 'Ember']);
  await shot(breeder, 'breeder-season-top');
  await breeder.locator('.scroll').evaluate((list) => list.scrollTo(0, 600));
  await shot(breeder, 'breeder-season-middle');
  await breeder.locator('.scroll').evaluate((list) => list.scrollTo(0, 1400));
  await shot(breeder, 'breeder-season-low');
  assert.deepEqual(await axe(breeder), []);
  assert.equal(await overflow(breeder), 0);

  // The late report comes, and then Tom's new one before his old one.
  await weighed(mira, '2026-11-20T06:45:00Z', 1050);
  await weighed(tom, '2026-11-20T06:45:00Z', 1045);
  const [late, fresh] = [await report(mira), await report(tom)];
  await go(breeder, '#/reports');
  await breeder.locator('#paste').fill(`${late}\n${fresh}`);
  await press(breeder, 'Read them');
  await press(breeder, 'Import them all');
  await breeder.locator('.chicks').waitFor();
  const ember = await state(breeder, 'Ember');
  assert.doesNotMatch(ember, /Not known|No report/, ember);
  const before = await words(row(breeder, 'Flint'));
  assert.match(before, /1045.*g/);
  await go(breeder, '#/reports');
  await breeder.locator('#paste').fill(old);
  await press(breeder, 'Read them');
  assert.match(await words(breeder.locator('main section.question')), /Flint.*older than the last report you have/);
  await press(breeder, 'Import them all');
  await breeder.locator('.chicks').waitFor();
  assert.equal(await words(row(breeder, 'Flint')), before, 'an old report changes nothing');

  // Two of one name have their rings beside it; what turns text around is shown, and cannot.
  const rubies = await breeder.locator('[data-chick="Ruby"] .beside-name').allInnerTexts();
  assert.deepEqual(rubies.sort(), ['GB 5', 'GB 6']);
  assert.equal(await row(breeder, 'Ember').locator('.beside-name:not(:empty)').count(), 0);
  assert.equal(await breeder.locator('.chick-card__name', { hasText: 'Onyx' }).innerText(), '\ufffdOnyx');
  assert.equal(await breeder.locator('.chick-card__name bdi', { hasText: '\u05e8' }).count(), 1);

  // Filters: one group, one clutch.
  await breeder.getByRole('button', { name: /^Weaned \(1\)$/ }).click();
  assert.deepEqual(await breeder.locator('.chick-card').evaluateAll((cards) => cards.map((card) => card.dataset.chick)), ['Haze']);
  await breeder.getByRole('button', { name: /^All \(8\)$/ }).click();
  await breeder.locator('summary', { hasText: 'Clutch and species' }).click();
  await breeder.locator('#filter-clutch').selectOption({ label: 'Green-winged macaw, 20 Sep to 21 Sep 2026' });
  assert.equal(await breeder.locator('.chick-card').count(), 2);
  await breeder.locator('#filter-clutch').selectOption({ label: 'All clutches' });

  // One leaves without a journey: placed at once, nothing heard yet; its owner stays known.
  await openChick(breeder, '\u05e8\u05d5\u05d1\u05d9');
  await press(breeder, 'It has left me');
  await breeder.locator('.chosen-chick [data-state]', { hasText: 'No report yet' }).waitFor();
  assert.equal(await breeder.locator('.dock a[href="tel:+15550115"]').count(), 1);

  // A remark of her own stays with her, and the owner that she notes is hers to call.
  await openChick(breeder, 'Ember');
  await breeder.locator('summary', { hasText: "Note its owner's name" }).click();
  await breeder.locator('#owner').fill('Mira');
  await breeder.locator('#owner-number').fill('+1 555 0110');
  await press(breeder, 'Save');
  await breeder.locator('.dock a[href="tel:+15550110"]').waitFor();

  await breeder.locator('#remark').fill('Call Mira about the cage.');
  await press(breeder, 'Keep the remark');
  await breeder.locator('[data-remarks] li', { hasText: 'Call Mira about the cage.' }).waitFor();
  await shot(breeder, 'breeder-chick');
  assert.deepEqual(await axe(breeder), []);
  assert.equal(await breeder.locator('.next-feed, .lamp-band, .small-acts').count(), 0);
  const card = await cardLinkOf(breeder);
  await go(mira, '#/take-in');
  await mira.locator('#paste').fill(card);
  await press(mira, 'Next');
  await mira.locator('.question').waitFor();
  assert.doesNotMatch(await words(mira.locator('main')), /about the cage/);

  // One table of all chicks, as a file.
  await go(breeder, '#/chicks');
  const downloading = breeder.waitForEvent('download');
  await press(breeder, 'All chicks as a table (CSV)');
  const csv = readFileSync(await (await downloading).path(), 'utf8');
  assert.equal(csv.trim().split('\r\n').length, 9, csv);

  // The others are told by their groups; a label of each fact stands on the card.
  await shot(breeder, 'breeder-season-end');

  // On a wide window a real table with the chosen chick and its chart beside it.
  await breeder.setViewportSize({ width: 1440, height: 900 });
  const table = breeder.locator('table.chick-table');
  await table.waitFor();
  assert.equal(await table.locator('tbody tr').count(), 8);
  assert.match(plain(await table.locator('thead').innerText()), /Chick\s+Owner\s+Stage\s+Placed\s+Weight\s+Since handover\s+Eaten\s+Report\s+Plan held\s+Vet/);
  await row(breeder, 'Flint').locator('button').first().click();
  await breeder.locator('.chosen h2', { hasText: 'Flint' }).waitFor();
  await breeder.locator('.chosen .chart').waitFor();
  await shot(breeder, 'breeder-table-1440');
  assert.deepEqual(await axe(breeder), []);
  assert.equal(await overflow(breeder), 0);
  await breeder.setViewportSize({ width: 1100, height: 800 });
  await shot(breeder, 'breeder-table-1100');
  assert.equal(await overflow(breeder), 0);
  await breeder.setViewportSize({ width: 1099, height: 800 });
  await table.waitFor({ state: 'detached' });
});

const cardLinkOf = async (page) => {
  await page.locator('.card-of summary').first().click();
  return copied(page, 'Copy card as link');
};

for (const theme of ['dark', 'light']) {
  test(`a breeder's screens fit 320 px with text at 200 %, and axe finds nothing, ${theme}`, async ({ bench }) => {
    const site = await bench.site();
    const page = await phone(bench, site, '2026-11-24T15:00:00Z', { viewport: { width: 320, height: 640 }, theme });
    await asBreeder(page, site);
    await firstCard(page, CHICK);
    await nextCard(page, { name: 'Flint', ring: 'GB 2', weight: 1015, hatched: '2026-08-26', owner: 'Tom', number: '+1 555 0111' });
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('html { font-size: 200%; }');
      document.adoptedStyleSheets = [sheet];
    });
    for (const name of ['chicks', 'chick', 'new-card', 'my-details', 'reports']) {
      await go(page, '#/droppings');
      await go(page, `#/${name}`);
      await page.locator('main h1').waitFor();
      await shot(page, `breeder-${name}-320-200-${theme}`);
      assert.equal(await overflow(page), 0, name);
      assert.deepEqual(await axe(page), [], name);
    }
  });
}

test('a breeder whose phone is lost gets her details, templates and chicks back from her backup', async ({ bench }) => {
  test.setTimeout(120_000);
  const site = await bench.site();
  const old = await phone(bench, site, '2026-11-24T15:00:00Z');
  await asBreeder(old, site);
  await firstCard(old, CHICK);
  await nextCard(old, { name: 'Flint', ring: 'GB 2', weight: 1015, hatched: '2026-08-26', owner: 'Tom', number: '+1 555 0111' });
  await openChick(old, 'Flint');
  await press(old, 'It has left me');
  await kept(old);
  const list = async (page) => {
    await go(page, '#/chicks');
    return words(page.locator('.chicks__all'));
  };
  const before = await list(old);
  await go(old, '#/handover');
  const saving = old.waitForEvent('download');
  await press(old, 'Save a backup file');
  const backup = await (await saving).path();
  await old.locator('#backup-check').setInputFiles(backup);
  await old.locator('.backup__answer', { hasText: 'everything on this phone' }).waitFor();

  // A new phone: nothing is asked of chicks that are hers, and the list is the same.
  const back = await phone(bench, site, '2026-11-24T15:30:00Z');
  await openApp(back, site, '#/take-in');
  await back.locator('#file').setInputFiles(backup);
  const brought = back.locator('#of-breeder');
  await brought.waitFor();
  assert.match(await words(brought), /Details and standing words: Ana, \+1 555 0100.*Green-winged macaw: 07:00 60 ml/s);
  assert.equal(await brought.locator('#use-backup').count(), 0);
  await shot(back, 'breeder-backup-new-phone');
  assert.deepEqual(await axe(back), []);
  await press(back, 'Import');
  await back.locator('.chicks').waitFor();
  await kept(back);
  assert.equal(await list(back), before);
  await go(back, '#/my-details');
  const value = (id) => back.locator(id).inputValue();
  assert.deepEqual([await value('#own-name'), await value('#own-hours'), await value('#second-number')], ['Ana', '8 to 22', '+1 555 0101']);
  assert.deepEqual([await value('#after-refusal'), await value('#own-note')], ['Wait an hour, then try again', 'Wash your hands first.']);
  assert.equal(await back.locator('#ask-before-drop').isChecked(), true);
  // The template of the next card is there, and a plan of hers is set by her.
  await nextCard(back, { name: 'Gale', ring: 'GB 3', weight: 1020, hatched: '2026-08-27' });
  await openChick(back, 'Flint');
  assert.equal(await back.locator('.dock a[href="tel:+15550111"]').count(), 1);

  // A newer detail here is shown beside the backup's, and stays unless she says otherwise.
  await go(back, '#/my-details');
  await back.locator('#own-number').fill('+1 555 0199');
  await press(back, 'Save');
  await back.locator('.chicks').waitFor();
  const again = async (useBackup) => {
    await go(back, '#/now');
    await go(back, '#/take-in');
    await back.locator('#file').setInputFiles(backup);
    await brought.waitFor();
    const told = await words(brought);
    if (useBackup) {
      await brought.locator('#use-backup').check();
      await brought.scrollIntoViewIfNeeded();
      await shot(back, 'breeder-backup-other');
    }
    await press(back, 'Import');
    await back.locator('.chicks').waitFor();
    await go(back, '#/my-details');
    return { told, number: await value('#own-number') };
  };
  const kept199 = await again(false);
  assert.match(kept199.told, /Different on this phone.*0199.*→.*0100/s);
  assert.equal(kept199.number, '+1 555 0199');
  assert.equal((await again(true)).number, '+1 555 0100');
});
