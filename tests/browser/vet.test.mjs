// The page for the vet: the reason is typed and kept, and the history fits on one A4 page. All chicks are made up.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from './fixtures.mjs';
import { clock, shot } from './harness.mjs';
import { go, kept, openApp } from './owner.mjs';
import { Script } from './script.mjs';
import { takeInText } from './states.mjs';

const NOW = '2026-12-05T06:58:00Z';

const day = (date, time) => `2026-${date}T${time}`;
const dates = ['11-22', '11-23', '11-24', '11-25', '11-26', '11-27', '11-28', '11-29', '11-30', '12-01', '12-02', '12-03', '12-04'];

// Thirteen days and a morning, each with weight, crop, two feeds, droppings; with signs, calls, a drop, a refusal.
const fullDays = ({ long = false } = {}) => {
  const text = (words) => (long ? `${words} `.repeat(40).slice(0, 950).trim() : words);
  const script = new Script();
  script.added('2026-11-18T12:00', {
    name: 'Saffron',
    ring: 'GB 26 AL 017',
    hatched: '2026-08-26',
    reference: { g10: 10100, day: '2026-11-16' },
    peak: { g10: 10600, day: '2026-11-02' },
    label_per_100_g: { kcal: 380, fat_pct10: 140, protein_pct10: 200 },
    solids: text('soaked corn, pellets, papaya'),
    note: text('She likes to be held in a towel.'),
    owner_name: 'Mira',
    owner_number: '07700 900456',
    contacts: [
      { role: 'breeder', name: 'Ana', number: '07700 900123' },
      { role: 'avian-vet', name: 'Harbour vets', number: '020 7946 0123' },
      { role: 'emergency-vet', name: 'Night line', number: '020 7946 0456' },
    ],
    said: [
      { topic: 'sex', text: text('hen, by DNA') },
      { topic: 'papers', text: text('circovirus and chlamydia negative, 1 Nov') },
      { topic: 'powder-name', text: text('Ana’s powder') },
      { topic: 'wings', text: text('flies, not clipped') },
    ],
  });
  script.note('2026-11-18T17:00', 'arrived');
  dates.forEach((date, index) => {
    script.weighed(day(date, '06:45'), 1008 - (index % 3));
    script.note(day(date, '06:47'), 'crop-seen', { state: 'flat', feel: 'soft' });
    script.fed(day(date, '07:00'), 'morning', index === 10 ? 30 : 60, 60);
    if (index < 5) {
      script.fed(day(date, '14:00'), 'midday', 40);
    }
    script.fed(day(date, '21:00'), 'bedtime', 60);
    script.droppings(day(date, '15:10'), index === 7 ? 'wet-after-fruit' : 'normal');
    script.note(day(date, '21:30'), 'droppings-counted', { paper: 'day', count: 17 + (index % 3) });
    script.note(day(date, '18:00'), 'room-seen', { c10: 230 });
    if (long) {
      for (const sign of ['dull', 'vomiting', 'begs-all-day', 'discharge']) {
        script.note(day(date, '16:00'), 'sign-seen', { sign });
        script.note(day(date, '17:00'), 'sign-gone', { sign });
      }
      script.note(day(date, '16:30'), 'called', { whom: 'avian-vet', agreed: text('come tomorrow if it goes on') });
    }
  });
  script.refused(day('11-26', '14:05'), 'midday');
  script.note(day('11-27', '12:00'), 'feed-dropped', { slot: 'midday', by_breeder: false });
  script.note(day('12-03', '10:00'), 'called', { whom: 'breeder', agreed: text('weigh twice a day') });
  script.note(day('12-05', '06:46'), 'crop-seen', { state: 'half-or-more', feel: 'soft' });
  script.note(day('12-05', '06:50'), 'weighed', { g10: 10190, crop: 'after-feed' });
  return script;
};

// How many pages the browser prints, by the page tree of the PDF (ISO 32000-1, 7.7.3.2: Count).
const printed = async (page, name) => {
  const pdf = (await page.pdf({ preferCSSPageSize: true, path: `tests/browser/shots/${name}.pdf` })).toString('latin1');
  const counts = [...pdf.matchAll(/\/Count (\d+)/g)].map(([, count]) => Number(count));
  assert.ok(counts.length > 0, 'the PDF tells no count of pages');
  return Math.max(...counts);
};

const vetPage = async (page) => {
  await go(page, '#/vet');
  const downloading = page.waitForEvent('download');
  await page.locator('.page section.group button').first().click();
  const file = await downloading;
  return readFileSync(await file.path(), 'utf8');
};

const open = async (bench, script, options = {}) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site, options);
  await clock(page, NOW);
  await openApp(page, site);
  await takeInText(page, script.backup());
  return { site, context, page };
};

const REASON = 'About half of the bedtime feed is still in the crop this morning, soft. Not fed since 21:00. Bright and begging.';

const reader = async (bench, site, html) => {
  const { page } = await bench.phone(site, { javaScriptEnabled: false, viewport: { width: 794, height: 1123 }, isMobile: false });
  await page.setContent(html);
  return page;
};

test('a chick with fourteen full days is one A4 page, led by the reason as it was typed', async ({ bench }) => {
  const { site, page } = await open(bench, fullDays());
  await go(page, '#/vet');
  await page.locator('#vet-reason').fill(REASON);
  await page.locator('form:has(#vet-reason) button').click();
  await kept(page);
  await shot(page, 'for-vet-dark');
  await page.reload();
  await page.locator('main h1').first().waitFor();
  await go(page, '#/vet');
  assert.equal(await page.locator('#vet-reason').inputValue(), REASON);
  const html = await vetPage(page);
  const paper = await reader(bench, site, html);
  assert.equal(await printed(paper, 'vet-page'), 1);
  await paper.emulateMedia({ media: 'print' });
  await shot(paper, 'vet-page-print');
  const text = (await paper.locator('body').innerText()).replaceAll('\u00a0', ' ');
  assert.ok(text.includes(REASON));
  assert.equal(await paper.locator('table.days tbody tr').count(), 14);
  assert.match(text, /Mira.*07700 900456/);
  assert.match(text, /Ana.*07700 900123/);
  // 120 ml a day of the last three for 1,008 g, at 380 kcal in 100 g of powder, a quarter of 1.06 g/ml: 119 ml and
  // 119.6 x 1.06 x 0.25 x 3.8 = 120 kcal; on 2 December 30 ml less were eaten: 110 ml a day.
  const eaten = text.match(/(\d+) ml and (\d+) kcal per kg a day/);
  assert.ok(eaten, text);
  const [ml, kcal] = eaten.slice(1).map(Number);
  assert.ok(Math.abs(ml - 110 / 1.007) < 2 && Math.abs(kcal - ml * 1.06 * 0.25 * 3.8) < 3, `${ml} ml, ${kcal} kcal`);
  assert.match(text, /23.0 °C measured Fri 4 Dec/);
  assert.match(text, /planned, not measured/);
});

test('texts as long as they may be, in either language, still make one page; a page that is not ours makes two', async ({ bench }) => {
  test.setTimeout(120_000);
  for (const locale of ['en-GB', 'es-MX']) {
    const { site, page } = await open(bench, fullDays({ long: true }), { locale });
    await go(page, '#/vet');
    await page.locator('#vet-reason').fill('half of the bedtime feed is left '.repeat(30).slice(0, 980));
    await page.locator('form:has(#vet-reason) button').click();
    await kept(page);
    const paper = await reader(bench, site, await vetPage(page));
    assert.equal(await printed(paper, `vet-page-long-${locale}`), 1, locale);
    await paper.emulateMedia({ media: 'print' });
    await shot(paper, `vet-page-long-${locale}`);
    await paper.setContent('<p style="block-size: 300mm">tall</p>');
    assert.equal(await printed(paper, 'two-pages'), 2);
  }
});
