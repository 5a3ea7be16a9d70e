// Text that would run as a script, in every field that people type, through every way out and on every
// screen. Each text sets a global when it runs; besides, no element and no handler may come of it.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { clock, started } from './harness.mjs';
import { go, hasFault, openApp } from './owner.mjs';
import { Script, takeIn } from './script.mjs';

const require = createRequire(import.meta.url);
const ICAL = require('ical.js').default ?? require('ical.js');

// Ways of an HTML parser into scripts: elements, attributes, raw-text elements, CDATA, addresses (HTML
// Living Standard, "Parsing HTML documents"). Short enough for a name.
const TEXTS = [
  '<img src=x onerror="ran=1">',
  '"><svg onload=ran=1>',
  "' autofocus onfocus='ran=1",
  '</script><script>ran=1</script>',
  '</title></style></textarea><script>ran=1</script>',
  ']]><script>ran=1</script><![CDATA[',
  'javascript:ran=1//',
  '<iframe srcdoc="<script>top.ran=1</script>">',
  '&lt;script&gt;ran=1&lt;/script&gt;',
];
// What the long fields hold.
const ALL = TEXTS.join(' ');
const DAY = '2026-11-24';
const ROUTES = ['now', 'weight', 'weaning', 'journal', 'handover', 'weigh', 'log', 'guide', 'home', 'crop', 'droppings', 'solids', 'wrong', 'settings', 'plan', 'start', 'type-in', 'whole-plan', 'take-in'];

// What is on the page that our own code never writes.
const strangers = (page) =>
  page.evaluate(() => {
    const found = [];
    if (window.ran !== undefined) {
      found.push('a text has run');
    }
    for (const element of document.querySelectorAll('body *')) {
      if (/^(img|iframe|object|embed|script|base|form|style|link)$/i.test(element.localName) && !element.matches('form.form, script[src^="./"], script[type="application/json"]')) {
        found.push(element.outerHTML.slice(0, 100));
      }
      for (const { name, value } of element.attributes) {
        if (/^on/i.test(name) || /^srcdoc|^autofocus$/i.test(name)) {
          found.push(`${name}="${value}"`);
        }
        if (/^(href|src|action)$/i.test(name) && !/^(#|tel:\+?\d+$|\.\/|https?:)/.test(value)) {
          found.push(`${name}="${value}"`);
        }
      }
    }
    return found;
  });

// The short fields each hold another text, from the given one on.
const scriptWith = (first) => {
  const text = (place) => TEXTS[(first + place) % TEXTS.length];
  const script = new Script();
  script.added(`${DAY}T06:00`, {
    name: text(0),
    ring: text(1),
    solids: ALL,
    note: ALL,
    contacts: [
      { role: 'breeder', name: text(2), number: '+1 555 0100' },
      { role: 'avian-vet', name: text(3), number: '(555) 01-01' },
    ],
  });
  script.weighed(`${DAY}T06:30`, 1010);
  script.fed(`${DAY}T07:00`, 'morning', 60);
  script.note(`${DAY}T08:00`, 'solids-seen', { what: text(4), eaten: 'little' });
  script.note(`${DAY}T09:00`, 'called', { whom: 'breeder', agreed: ALL });
  script.note(`${DAY}T10:00`, 'noted', { text: ALL });
  script.note(`${DAY}T11:00`, 'sign-seen', { sign: 'click-cleared' });
  script.entries.forEach((entry, place) => {
    entry.by = text(place);
  });
  return script;
};

const open = async (bench, first) => {
  const site = await bench.site();
  const { context, page } = await bench.phone(site);
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: site.origin });
  await clock(page, `${DAY}T20:50:00Z`);
  // The text of every picture that the app draws.
  await page.addInitScript(() => {
    window.drawn = [];
    const src = Object.getOwnPropertyDescriptor(HTMLImageElement.prototype, 'src');
    Object.defineProperty(HTMLImageElement.prototype, 'src', {
      ...src,
      set(value) {
        window.drawn.push(value);
        src.set.call(this, value);
      },
    });
  });
  await openApp(page, site);
  await takeIn(page, scriptWith(first));
  return { site, page };
};

const saved = async (page, button) => {
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return readFileSync(await (await downloading).path(), 'utf8');
};

for (const first of [0, 3, 6]) {
  const text = TEXTS[first];
  test(`it stays text on every screen: ${text}`, async ({ bench }) => {
    test.setTimeout(120_000);
    const { page } = await open(bench, first);
    for (const route of ROUTES) {
      await go(page, `#/${route}`);
      await page.evaluate(() => document.querySelectorAll('main details').forEach((details) => details.setAttribute('open', '')));
      assert.deepEqual(await strangers(page), [], route);
    }
    await go(page, '#/journal');
    assert.ok((await page.locator('main').innerText()).includes(ALL));
    await page.emulateMedia({ media: 'print' });
    assert.deepEqual(await strangers(page), [], 'printed');
  });

  test(`it stays text in every way out: ${text}`, async ({ bench }) => {
    test.setTimeout(120_000);
    const { site, page } = await open(bench, first);
    const folder = bench.folder();
    // Opened as a file, with scripts allowed and without the page's own policy, which alone would do.
    const opened = async (name, html) => {
      const { page: reader } = await bench.phone(site);
      const file = join(folder, `${name}.html`);
      const bare = html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '');
      assert.notEqual(bare, html, 'a page of ours has a policy');
      writeFileSync(file, bare);
      await reader.goto(`file://${file}`);
      for (const media of ['screen', 'print']) {
        await reader.emulateMedia({ media });
        assert.deepEqual(await strangers(reader), [], `${name}, ${media}`);
      }
      assert.ok((await reader.locator('body').innerText()).includes(text), name);
      await reader.context().close();
    };
    await go(page, '#/handover');
    await opened('report', await saved(page, 'Report for the breeder'));
    await opened('vet-page', await saved(page, 'Page for the vet'));
    const calendar = await saved(page, 'Calendar file');
    const tables = [await saved(page, 'Weights (CSV)'), await saved(page, 'Feeds (CSV)'), await saved(page, 'Droppings (CSV)')];
    const card = page.locator('details.group > summary', { hasText: 'Handover card' });
    await card.click();
    await opened('card', await saved(page, 'Card as a file to print'));

    // RFC 5545: three feeds as planned and the weighing, whose titles hold the name and nothing else began.
    const root = new ICAL.Component(ICAL.parse(calendar));
    const events = root.getAllSubcomponents('vevent');
    assert.equal(events.length, 4);
    assert.ok(events.every((event) => event.getFirstPropertyValue('summary').includes(text)));
    // No cell begins a formula.
    for (const table of tables) {
      assert.doesNotMatch(table, /(^|,|\n)"?[=+@\t]/);
    }

    await go(page, '#/weight');
    await page.locator('[data-send="true"]').click();
    await page.locator('.picture__image').waitFor();
    const address = (await page.evaluate(() => window.drawn)).find((address) => address.startsWith('data:image/svg+xml'));
    const svg = decodeURIComponent(address.slice(address.indexOf(',') + 1));
    const names = await page.evaluate((svg) => {
      const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
      return [...parsed.querySelectorAll('*')].map((element) => element.localName);
    }, svg);
    const known = ['svg', 'g', 'rect', 'text', 'path', 'circle', 'polyline', 'polygon', 'line'];
    assert.deepEqual(names.filter((name) => !known.includes(name)), []);
    assert.doesNotMatch(svg.replaceAll(/>[^<]*</g, '><'), /\son\w+=/);

    // A second phone sees the same from the card's link, before it is taken and after.
    await go(page, '#/handover');
    await card.click();
    await page.getByRole('button', { name: 'Copy card as link' }).click();
    await page.getByRole('button', { name: 'Copied.' }).first().waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    const { page: owner } = await bench.phone(site);
    await clock(owner, `${DAY}T21:00:00Z`);
    await owner.goto(link);
    await started(owner);
    await owner.locator('.card-in').waitFor();
    assert.ok((await owner.locator('main').innerText()).includes(text));
    assert.deepEqual(await strangers(owner), [], 'landing');
    await owner.getByRole('button', { name: 'Take it' }).click();
    await owner.locator('.top-bar').waitFor();
    assert.deepEqual(await strangers(owner), [], 'taken');
  });
}

test('a telephone number that is an address of another kind is not taken in', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, `${DAY}T20:50:00Z`);
  await openApp(page, site, '#/take-in');
  for (const number of ['javascript:ran=1', '555;phone-context=evil.example', '"><a href=x>1234', '*#06#123']) {
    const script = new Script();
    script.added(`${DAY}T06:00`, { contacts: [{ role: 'breeder', name: 'Made up', number }] });
    await page.locator('#paste').fill(script.backup());
    await page.getByRole('button', { name: 'Next' }).click();
    await hasFault(page, /Nothing was changed/);
    assert.equal(await page.locator('.question').count(), 0, number);
  }
});
