// A season of eight cards on a breeder's, owners', a sitter's and a vet's phones: what her work costs in taps, reports at
// once, the table, a chick lent, one at a clinic, one given back, a lost phone; no note is lost on the way. All is made up.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { asBreeder, cardLink, nextCard, openChick, phone, row, scripted, state, wellFed } from './breeder.mjs';
import { test } from './fixtures.mjs';
import { shot, started } from './harness.mjs';
import { CHICK, copied, go, kept, openApp, plain, press, words } from './owner.mjs';
import { clockAt, takeIn } from './script.mjs';

// Before: 33 taps, 30 more in pickers and 278 characters for the first card, 14 taps and 30 characters for the next one.
const FIRST = { taps: 30, characters: 30 };
const NEXT = { taps: 6, characters: 25 };

// Fills fields as a person does, and counts: a tap a field or button, two a list, each letter of a text.
const counted = (page) => {
  const effort = { taps: 0, characters: 0 };
  return {
    effort,
    tap: async (locator) => {
      effort.taps += 1;
      await locator.click();
    },
    type: async (id, text) => {
      effort.taps += 1;
      effort.characters += text.length;
      await page.locator(id).fill(text);
    },
    choose: async (id, label) => {
      effort.taps += 2;
      await page.locator(id).selectOption({ label });
    },
    // A calendar or clock of the phone: opened, chosen, closed.
    pick: async (id, value) => {
      effort.taps += 3;
      await page.locator(id).fill(value);
    },
  };
};

// The ids of every entry about a chick that a phone holds.
const entriesOf = (page, chick) =>
  page.evaluate((chick) => {
    const lines = Object.values(localStorage).join('\n');
    const found = [...lines.matchAll(/"id":"([^"]{16})","chick":"([^"]{16})"/g)];
    return [...new Set(found.filter(([, , of]) => of === chick).map(([, id]) => id))].sort();
  }, chick);

const chickOf = (page, ring) =>
  page.evaluate((ring) => {
    const lines = Object.values(localStorage).join('\n');
    const added = [...lines.matchAll(/"chick":"([^"]+)"[^\n]*?"did":"chick-added"[^\n]*?"ring":"([^"]*)"/g)];
    return added.find(([, , of]) => of === ring)[1];
  }, ring);

// Everything that `held` has is among what `page` holds.
const holds = async (page, chick, held, what) => {
  const there = new Set(await entriesOf(page, chick));
  const lost = held.filter((id) => !there.has(id));
  assert.deepEqual(lost, [], `${what}: ${lost.length} of ${held.length} lost`);
};

const called = async (page, name) => {
  await go(page, '#/settings');
  await page.locator('#carer').fill(name);
};

const home = async (page, link, name) => {
  await page.goto(link);
  await started(page);
  await press(page, 'Take it');
  await press(page, 'Yes, it is home');
  await called(page, name);
  await kept(page);
};

const recordsLink = async (page) => {
  await go(page, '#/now');
  await go(page, '#/handover');
  return copied(page, 'Copy report as link');
};

const join = async (page, link) => {
  await go(page, '#/now');
  await go(page, '#/take-in');
  await page.locator('#paste').fill(link);
  await press(page, 'Next');
  await press(page, 'Import');
  await page.locator('.top-bar__name').waitFor();
  await kept(page);
};

const handTo = async (page, name, to, who) => {
  await go(page, '#/settings');
  await page.locator('summary', { hasText: `Hand ${name} to somebody` }).click();
  await page.getByRole('radio', { name: to }).check();
  await page.locator('#hand-name').fill(who);
  await press(page, 'Note it');
  await press(page, 'No, it is somewhere else');
  await kept(page);
};

// A day later it is asked; the same stands in the section of a chick that is away.
const isBack = (page) => page.getByRole('button', { name: 'Yes, it is back', exact: true }).first().click();

const note = async (page, text) => {
  await go(page, '#/journal');
  await page.locator('details.group', { has: page.locator('#note') }).locator('summary').click();
  await page.locator('#note').fill(text);
  await page.locator('details.group', { has: page.locator('#note') }).getByRole('button', { name: 'Keep' }).click();
  await kept(page);
};

const pasteReports = async (page, text, found) => {
  await go(page, '#/reports');
  await page.locator('#paste').fill(text);
  await press(page, 'Read them');
  const preview = page.locator('main section.question', { hasText: `${found} texts read` });
  await preview.waitFor();
  const told = await words(preview);
  await press(page, 'Import them all');
  await page.locator('.chicks').waitFor();
  await kept(page);
  return told;
};

// The breeder's eight chicks of a season: a clutch of six, and two that hatched three weeks later.
const NEXT_SEVEN = [
  ['Flint', 'GB 2', '2026-06-25', 'Tom', '+1 555 0111'],
  ['Gale', 'GB 3', '2026-06-27', 'Lea', '+1 555 0112'],
  ['Haze', 'GB 4', '2026-06-28', 'Jon', '+1 555 0113'],
  ['Iris', 'GB 5', '2026-06-30'],
  ['Jade', 'GB 6', '2026-07-02'],
  ['Kelp', 'GB 7', '2026-07-20'],
  ['Lark', 'GB 8', '2026-07-21'],
];

const eightCards = async (breeder) => {
  await breeder.locator('.chicks').waitFor();
  const first = counted(breeder);
  await first.tap(breeder.locator('.dock').getByRole('link', { name: 'New card' }));
  await first.tap(breeder.locator('main a.button--main'));
  await first.choose('#species', CHICK.species);
  await first.type('#name', CHICK.name);
  await first.pick('#hatched', '2026-06-24');
  await first.type('#handover-weight', CHICK.weight);
  await first.pick('#handover-day', '2026-10-01');
  for (const [slot, time, ml] of CHICK.feeds) {
    await first.pick(`#time-${slot}`, time);
    await first.type(`#volume-${slot}`, ml);
  }
  await first.tap(breeder.locator('summary', { hasText: 'More of the plan' }));
  await first.type('#ring', 'GB 1');
  await first.tap(breeder.getByRole('button', { name: 'Start with these' }));
  await breeder.locator('.chosen-chick').waitFor();

  // The next one of the clutch, counted as well; the others in the same way.
  const [[name, ring], ...others] = NEXT_SEVEN;
  await go(breeder, '#/chicks');
  const next = counted(breeder);
  await next.tap(breeder.locator('.dock').getByRole('link', { name: 'New card' }));
  await next.type('#name', name);
  await next.type('#ring', ring);
  await next.type('#handover-weight', '1040');
  await next.tap(breeder.locator('[data-near]').getByRole('button', { name: '25 Jun' }));
  await next.tap(breeder.getByRole('button', { name: 'Make the card' }));
  await breeder.locator('.chosen-chick').waitFor();
  for (const [name, ring, hatched, owner, number] of others) {
    await nextCard(breeder, { name, ring, weight: 1040, hatched, owner, number });
  }
  await kept(breeder);
  for (const [effort, most] of [[first.effort, FIRST], [next.effort, NEXT]]) {
    assert.ok(effort.taps <= most.taps && effort.characters <= most.characters, JSON.stringify(effort));
  }
  console.log(`first card: ${JSON.stringify(first.effort)}; next: ${JSON.stringify(next.effort)}`);
};

test('a season of eight cards: three owners, a sitter, a clinic, one given back, one phone lost, no note lost', async ({ bench }) => {
  test.setTimeout(240_000);
  const site = await bench.site();
  const breeder = await phone(bench, site, '2026-10-01T08:00:00Z');
  await asBreeder(breeder, site);
  await eightCards(breeder);

  // Three owners take their cards.
  const noon = '2026-10-01T12:00:00Z';
  const [tom, lea, jon] = await Promise.all([1, 2, 3].map(() => phone(bench, site, noon)));
  await openChick(breeder, 'Flint');
  await home(tom, await cardLink(breeder), 'Tom');
  await openChick(breeder, 'Gale');
  await home(lea, await cardLink(breeder), 'Lea');
  await openChick(breeder, 'Haze');
  await home(jon, await cardLink(breeder), 'Jon');
  const [flint, gale, haze] = await Promise.all(['GB 2', 'GB 3', 'GB 4'].map((ring) => chickOf(breeder, ring)));

  // Fourteen weeks old: Flint is well and noted daily; Gale is silent after two days; Haze breathes hard on the fifth.
  const scripts = { flint: scripted(31, flint), gale: scripted(32, gale), haze: scripted(33, haze) };
  wellFed(scripts.gale, '10', 2, 3);
  await clockAt(lea, '2026-10-03T21:30:00Z');
  await takeIn(lea, scripts.gale);
  const fromLea = await recordsLink(lea);
  wellFed(scripts.flint, '10', 2, 5);
  wellFed(scripts.haze, '10', 2, 5);
  scripts.haze.note('2026-10-06T07:30', 'sign-seen', { sign: 'laboured-breathing' });
  await Promise.all([tom, jon].map((page) => clockAt(page, '2026-10-06T08:00:00Z')));
  await takeIn(tom, scripts.flint);
  await note(tom, 'Ate a whole pea');
  await takeIn(jon, scripts.haze);

  // From the alarm one tap opens what goes to the vet; a call is no visit, and an appointment stands on the list.
  await go(jon, '#/now');
  await jon.locator('.show-vet').click();
  await jon.locator('main h1', { hasText: 'For the vet' }).waitFor();
  await jon.locator('#vet-reason').fill('Breathes hard since half past seven.');
  await press(jon, 'Keep the reason');
  await kept(jon);
  const fromJon = await recordsLink(jon);
  const fromTom = await recordsLink(tom);

  // All of it in one text, cut by a mail program's marks.
  await clockAt(breeder, '2026-10-06T09:00:00Z');
  const told = await pasteReports(breeder, `> Lea wrote:\n> ${fromLea}\n\nTom:\n${fromTom}\nJon: ${fromJon}`, 3);
  for (const name of ['Flint', 'Gale', 'Haze']) {
    assert.match(told, new RegExp(`${name}: \\d+ new entries`));
  }
  for (const [page, chick, who] of [[tom, flint, 'Tom'], [lea, gale, 'Lea'], [jon, haze, 'Jon']]) {
    await holds(breeder, chick, await entriesOf(page, chick), `${who}'s report`);
  }

  // Who needs a call comes first: the emergency, then silence, which is never green.
  const need = await breeder.locator('.chick-group').first().locator('.chick-card').evaluateAll((cards) => cards.map((card) => card.dataset.chick));
  assert.deepEqual(need, ['Haze', 'Gale'], await words(breeder.locator('.chicks')));
  assert.match(await state(breeder, 'Haze'), /^Emergency/);
  assert.match(await state(breeder, 'Gale'), /^Not known\. No report for 2 days/);
  assert.doesNotMatch(await state(breeder, 'Flint'), /Not known|Emergency/);
  await shot(breeder, 'season-need');
  await breeder.locator('summary', { hasText: 'Clutch and species' }).click();
  await breeder.locator('#filter-clutch').selectOption({ label: 'Green-winged macaw, 20 Jul to 21 Jul 2026' });
  assert.deepEqual(await breeder.locator('.chick-card').evaluateAll((cards) => cards.map((card) => card.dataset.chick).sort()), ['Kelp', 'Lark']);
  await breeder.locator('#filter-clutch').selectOption({ label: 'All clutches' });

  // A remark is hers alone: in her backup, in nothing that goes out.
  await openChick(breeder, 'Flint');
  await breeder.locator('#remark').fill('Ask Tom about the cage.');
  await press(breeder, 'Keep the remark');
  await breeder.locator('[data-remarks] li', { hasText: 'Ask Tom about the cage.' }).waitFor();
  await kept(breeder);

  // Haze goes to a clinic with the page for the vet, is seen there, and comes back.
  await handTo(jon, 'Haze', 'a clinic, for some days', 'Harbour vets');
  await jon.locator('[data-life="away"]').waitFor();
  await go(jon, '#/vet');
  const saving = jon.waitForEvent('download');
  await press(jon, 'Page for the vet');
  const page = readFileSync(await (await saving).path(), 'utf8');
  const paper = (await bench.phone(site, { javaScriptEnabled: false, viewport: { width: 794, height: 1123 }, isMobile: false })).page;
  await paper.setContent(page);
  const clinical = plain(await paper.locator('body').innerText());
  assert.match(clinical, /Breathes hard since half past seven/);
  assert.match(clinical, /laboured breathing at rest/);
  assert.doesNotMatch(clinical, /Seen by a vet/);
  await clockAt(jon, '2026-10-07T10:00:00Z');
  await go(jon, '#/vet');
  await jon.locator('#visits summary', { hasText: 'A vet saw it' }).click();
  await jon.locator('#vet-said').fill('Airways clear, warm and quiet');
  await press(jon, 'Note the visit');
  await jon.locator('#visits li', { hasText: 'Airways clear' }).waitFor();
  await clockAt(jon, '2026-10-07T10:05:00Z');
  await jon.locator('#visits summary', { hasText: 'Appointment' }).click();
  await jon.locator('#vet-day').fill('2026-10-13');
  await jon.locator('#vet-time').fill('10:30');
  await shot(jon, 'season-visits');
  await press(jon, 'Keep the appointment');
  await jon.locator('#visits li', { hasText: 'Vet on Tue 13 Oct, 10:30' }).waitFor();
  await go(jon, '#/now');
  await isBack(jon);
  // What the clinic noted comes along: fed as planned, and the vet's word that it may be fed at home.
  wellFed(scripts.haze, '10', 6, 6).weighed('2026-10-07T06:45', 1040).fed('2026-10-07T07:05', 'morning', 60);
  scripts.haze.note('2026-10-07T10:01', 'sign-gone', { sign: 'laboured-breathing' });
  scripts.haze.note('2026-10-07T10:02', 'advice-noted', { who: 'avian-vet', about: 'as planned', may_feed: true });
  await takeIn(jon, scripts.haze);
  await jon.locator('.to-do summary').click();
  await jon.locator('.to-do', { hasText: 'Vet on Tue 13 Oct, 10:30' }).waitFor();
  await shot(jon, 'season-to-do');

  // Flint is lent to a sitter, who notes on a phone of her own, and comes back with every note.
  await clockAt(tom, '2026-10-06T12:00:00Z');
  await handTo(tom, 'Flint', 'a sitter, for some days', 'Sue');
  const sitter = await phone(bench, site, '2026-10-06T12:30:00Z');
  await openApp(sitter, site);
  await join(sitter, await recordsLink(tom));
  await sitter.locator('#role-name').fill('Sue');
  await press(sitter, 'We both care for it');
  await holds(sitter, flint, await entriesOf(tom, flint), 'lent');
  const atSitter = scripted(34, flint);
  wellFed(atSitter, '10', 7, 8);
  await clockAt(sitter, '2026-10-08T22:00:00Z');
  await takeIn(sitter, atSitter);
  await note(sitter, 'Slept well here');
  await clockAt(tom, '2026-10-08T22:30:00Z');
  await go(tom, '#/now');
  await isBack(tom);
  await join(tom, await recordsLink(sitter));
  await holds(tom, flint, await entriesOf(sitter, flint), 'back from the sitter');

  // Gale is given back, with every note.
  await clockAt(lea, '2026-10-08T12:00:00Z');
  await note(lea, 'We move house, Gale goes back');
  await handTo(lea, 'Gale', 'its breeder', 'Ana');
  await lea.locator('[data-life="followed"]').waitFor();
  await clockAt(breeder, '2026-10-09T09:00:00Z');
  await pasteReports(breeder, `${await recordsLink(lea)}\n${await recordsLink(tom)}\n${await recordsLink(jon)}`, 3);
  for (const [page, chick, who] of [[tom, flint, 'Tom'], [lea, gale, 'Lea'], [jon, haze, 'Jon']]) {
    await holds(breeder, chick, await entriesOf(page, chick), `${who}'s second report`);
  }
  await openChick(breeder, 'Gale');
  await go(breeder, '#/journal');
  const ofGale = await words(breeder.locator('main'));
  assert.match(ofGale, /Given back to the breeder: Ana/);
  assert.match(ofGale, /We move house, Gale goes back/);

  // Seen is not called, in the table and in its file.
  await go(breeder, '#/chicks');
  assert.match(await words(row(breeder, 'Haze')), /Vet: seen Wed 7 Oct/);
  assert.match(await words(row(breeder, 'Flint')), /Vet: no/);
  const tabling = breeder.waitForEvent('download');
  await press(breeder, 'All chicks as a table (CSV)');
  const lines = readFileSync(await (await tabling).path(), 'utf8').trim().split('\r\n');
  assert.equal(lines.length, 9, 'a heading and eight chicks');
  const cells = (line) => [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, cell]) => cell);
  const place = cells(lines[0]).indexOf('seen by a vet on');
  const seen = Object.fromEntries(lines.slice(1).map(cells).map((row) => [row[0], row[place]]));
  assert.deepEqual([seen.Haze, seen.Flint, seen.Kelp], ['2026-10-07', '', '']);

  // Tom's phone is lost. What the breeder has comes back to a new one: every note, none of her remarks.
  const before = await entriesOf(tom, flint);
  await openChick(breeder, 'Flint');
  await breeder.locator('[data-remarks] li', { hasText: 'Ask Tom about the cage.' }).waitFor();
  const fromBreeder = await recordsLink(breeder);
  const again = await phone(bench, site, '2026-10-09T10:00:00Z');
  await openApp(again, site);
  await join(again, fromBreeder);
  await press(again, 'It is mine: this phone is new');
  await holds(again, flint, before, 'the lost phone');
  await go(again, '#/journal');
  const journal = await words(again.locator('main'));
  assert.match(journal, /Slept well here/);
  assert.doesNotMatch(journal, /about the cage/);
  await go(breeder, '#/handover');
  const backing = breeder.waitForEvent('download');
  await press(breeder, 'Save a backup file');
  assert.match(readFileSync(await (await backing).path(), 'utf8'), /Ask Tom about the cage\./);
});
