// A card between two phones: what matters of it before it is taken, the same by link, paste, file and picture.
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import jsQR from 'jsqr';
import { test } from './fixtures.mjs';
import { axe, clock, cutWords, overflow, shot, started } from './harness.mjs';
import { copied, eveningPhone, go, kept, openApp, openCard, plain, press, words } from './owner.mjs';
import { Script } from './script.mjs';

const DAY = '2026-11-18';
const NOW = `${DAY}T12:00:00Z`;

// A card as a breeder fills it.
const FILLED = {
  name: 'Saffron',
  ring: 'GB 26 AL 017',
  hatched: '2026-08-26',
  reference: { g10: 10100, day: DAY },
  feeds: [
    { slot: 'morning', time: '07:00', ml10: 600 },
    { slot: 'midday', time: '14:00', ml10: 600 },
    { slot: 'bedtime', time: '21:00', ml10: 600 },
  ],
  contacts: [
    { role: 'breeder', name: 'Ana', number: '07700 900123' },
    { role: 'avian-vet', name: 'Made-up vet', number: '020 7946 0123' },
    { role: 'emergency-vet', name: 'Made-up night vet', number: '020 7946 0456' },
  ],
  breeder_hours: '08:00–22:00',
  note: 'Hold the head level from the left side.',
};

// The same plan for every breeder's phone, changed by some fields.
const breederWith = async (bench, site, plan = {}) => {
  const { context, page } = await bench.phone(site);
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: site.origin });
  await clock(page, NOW);
  await openApp(page, site, '#/take-in');
  const script = new Script();
  script.added(`${DAY}T08:00`, { ...FILLED, ...plan });
  await page.locator('#paste').fill(script.backup());
  await press(page, 'Next');
  await press(page, 'Import');
  await page.locator('.top-bar').waitFor();
  return page;
};

const ownerPhone = async (bench, site, options = {}) => {
  const { page } = await bench.phone(site, options);
  await clock(page, NOW);
  return page;
};

const linkOf = async (page) => {
  await openCard(page);
  if (await page.getByRole('button', { name: 'I know, send it so' }).isVisible()) {
    await press(page, 'I know, send it so');
  }
  return copied(page, 'Copy card as link');
};

const fileOf = async (page, button) => {
  const downloading = page.waitForEvent('download');
  await press(page, button);
  return (await downloading).path();
};

test('a card says whose it is, then the six lines that matter; one tap takes it and asks whether it is home', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await breederWith(bench, site);
  const link = await linkOf(breeder);
  const owner = await ownerPhone(bench, site, { viewport: { width: 360, height: 740 } });
  await owner.goto(link);
  await started(owner);
  await owner.locator('.card-in__line').first().waitFor();
  const title = owner.locator('main h1');
  assert.equal(plain(await title.innerText()), 'Ana sends you Saffron’s card');
  const lines = (await owner.locator('.card-in__line').allInnerTexts()).map((line) => plain(line).replaceAll(/\s+/g, ' '));
  assert.equal(lines.length, 6);
  assert.match(lines[0], /^Feeds 07:00, 14:00, 21:00, 60 ml each, syringe$/);
  assert.match(lines[1], /^Serve at 39\.0–40\.5 °C, 25 % powder$/);
  // 1,010 g less 10 % are 909 g.
  assert.match(lines[2], /^Weight 1010 g, call Ana at 909 g$/);
  assert.match(lines[3], /^If refused offer it again after 45 min and 2 h 30 min$/);
  assert.match(lines[4], /^Report every day for 7 days/);
  assert.match(lines[5], /^Call 07700 900123, Ana, 08:00–22:00$/);
  // What else is on it is folded, and the act needs no scrolling.
  assert.equal(await owner.getByText('Hold the head level').isVisible(), false);
  const take = await owner.getByRole('button', { name: 'Take it' }).boundingBox();
  assert.ok(take.y + take.height <= 740, JSON.stringify(take));
  assert.match(await owner.locator('.card-in .caution').innerText(), /burn, choke or starve/);
  assert.deepEqual(await axe(owner), []);
  await shot(owner, 'card-received');
  await press(owner, 'Take it');
  await owner.locator('.question', { hasText: 'Is Saffron home?' }).waitFor();
});

test('a card stays readable at 320 px with large text, by day', async ({ bench }) => {
  const site = await bench.site();
  const link = await linkOf(await breederWith(bench, site));
  const owner = await ownerPhone(bench, site, { viewport: { width: 320, height: 640 }, colorScheme: 'light' });
  await owner.goto(link);
  await started(owner);
  await owner.locator('.card-in').waitFor();
  await owner.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  });
  assert.equal(await overflow(owner), 0);
  assert.deepEqual(await cutWords(owner), []);
  await shot(owner, 'card-received-320');
});

test('an older card says so and cannot be taken, the same one neither', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await breederWith(bench, site);
  const first = await linkOf(breeder);
  await go(breeder, '#/plan');
  await breeder.locator('#volume-6').fill('50');
  await press(breeder, 'Save the changes');
  await kept(breeder);
  const second = await linkOf(breeder);
  const owner = await ownerPhone(bench, site);
  await owner.goto(second);
  await started(owner);
  await press(owner, 'Take it');
  await owner.locator('.top-bar').waitFor();
  for (const [link, title, kind] of [
    [first, 'An older card for Saffron', 'older'],
    [second, 'You have this card for Saffron', 'known'],
  ]) {
    await go(owner, '#/now');
    await go(owner, '#/take-in');
    await owner.locator('#paste').fill(`> Ana wrote:\n> ${link.replace(/.{60}/g, '$&\n> ')}\n`);
    await press(owner, 'Next');
    await owner.locator(`[data-card="${kind}"]`).waitFor();
    assert.equal(plain(await owner.locator('main h1').innerText()), title);
    assert.equal(await owner.getByRole('button', { name: /^(Take it|Use the changed plan)$/ }).count(), 0);
    assert.equal(await owner.locator('.dock .button--main').count(), 0);
    await shot(owner, `card-${kind}`);
  }
});

test('link, paste, file and picture bring the same card', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await breederWith(bench, site);
  const link = await linkOf(breeder);
  const file = await fileOf(breeder, 'Card as a file to print');
  const texts = [];
  const seen = async (owner) => {
    await owner.locator('.card-in__line').first().waitFor();
    await owner.locator('.card-in summary').click();
    texts.push(`${await words(owner.locator('main h1'))}\n${await words(owner.locator('.card-in'))}`);
  };
  const landed = await ownerPhone(bench, site);
  await landed.goto(link);
  await started(landed);
  await seen(landed);
  const pasted = await ownerPhone(bench, site);
  await openApp(pasted, site, '#/take-in');
  await pasted.locator('#paste').fill(`The card:\n${link}\nSee you!`);
  await press(pasted, 'Next');
  await seen(pasted);
  const filed = await ownerPhone(bench, site);
  await openApp(filed, site, '#/take-in');
  await filed.locator('#file').setInputFiles({ name: 'card.html', mimeType: 'text/html', buffer: (await import('node:fs')).readFileSync(file) });
  await seen(filed);
  const scanned = await ownerPhone(bench, site);
  const read = await decoded(breeder, await breeder.locator('.qr').screenshot());
  await scanned.goto(read);
  await started(scanned);
  await seen(scanned);
  assert.equal(new Set(texts).size, 1, [...new Set(texts)].join('\n---\n'));
});

test('a picture that is none of ours and a file that is no text are refused in words', async ({ bench }) => {
  const site = await bench.site();
  const owner = await ownerPhone(bench, site);
  await openApp(owner, site, '#/take-in');
  for (const [name, mimeType, buffer] of [
    ['photo.png', 'image/png', Buffer.from('89504e470d0a1a0a0000000d49484452ffd8ffe0', 'hex')],
    ['photo.jpg', 'image/jpeg', Buffer.alloc(4_096, 0xff)],
    ['drawing.svg', 'image/svg+xml', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')],
    ['empty.html', 'text/html', Buffer.alloc(0)],
  ]) {
    await owner.locator('#file').setInputFiles({ name, mimeType, buffer });
    await owner.locator('#paste-fault', { hasText: /\w/ }).waitFor();
    assert.equal(await owner.locator('.card-in, .question').count(), 0, name);
  }
});

test('a name that is written from right to left turns no other word', async ({ bench }) => {
  const site = await bench.site();
  // Overrides that nobody ends, and a name in Arabic letters.
  for (const name of ['Saf\u202efron', '\u2067Ruby', 'ياقوت']) {
    const link = await linkOf(await breederWith(bench, site, { name, contacts: [{ role: 'breeder', name: `A\u202ena`, number: '07700 900123' }] }));
    const owner = await ownerPhone(bench, site);
    await owner.goto(link);
    await started(owner);
    const title = owner.locator('main h1');
    await title.locator('bdi').first().waitFor();
    const names = await title.locator('bdi').allInnerTexts();
    assert.deepEqual(names, [`A\u202ena`, name]);
    // Each word of ours stands to the right of the one before it.
    const lefts = await title.evaluate((element) => {
      const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      const found = [];
      while (walker.nextNode()) {
        for (const { 0: word, index } of walker.currentNode.data.matchAll(/sends|you/g)) {
          const range = document.createRange();
          range.setStart(walker.currentNode, index);
          range.setEnd(walker.currentNode, index + word.length);
          const box = range.getBoundingClientRect();
          found.push([box.top, box.left]);
        }
      }
      return found;
    });
    assert.equal(lefts.length, 2);
    assert.ok(lefts[0][0] < lefts[1][0] || lefts[0][1] < lefts[1][1], JSON.stringify(lefts));
    await owner.context().close();
  }
});

// What a decoder reads in a picture, after it was turned by some degrees and blurred by some pixels; null for
// nothing.
const decoded = async (page, png, degrees = 0, blur = 0) => {
  const { pixels, width, height } = await page.evaluate(
    async ({ base64, degrees, blur }) => {
      const image = new Image();
      image.src = `data:image/png;base64,${base64}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      // The white of the page goes on around it.
      const near = degrees === 0 ? 1 : 3;
      [canvas.width, canvas.height] = [near * (image.width + 60), near * (image.height + 60)];
      const context = canvas.getContext('2d');
      context.fillStyle = '#fff';
      context.fillRect(0, 0, canvas.width, canvas.height);
      context.filter = blur > 0 ? `blur(${blur * near}px)` : 'none';
      context.translate(canvas.width / 2, canvas.height / 2);
      context.rotate((degrees * Math.PI) / 180);
      // A camera that comes nearer.
      context.scale(near, near);
      context.drawImage(image, -image.width / 2, -image.height / 2);
      const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height);
      const reader = new FileReader();
      reader.readAsDataURL(new Blob([data]));
      await new Promise((done) => {
        reader.onload = done;
      });
      return { pixels: reader.result.split(',')[1], width, height };
    },
    { base64: png.toString('base64'), degrees, blur },
  );
  return jsQR(Uint8ClampedArray.from(Buffer.from(pixels, 'base64')), width, height)?.data ?? null;
};

const LONG = 'a word or two more than anybody reads '.repeat(27).slice(0, 1_000);
// Every text as long as may be, six feeds, six contacts.
const FULLEST = {
  name: 'Saffron of the long and winding name, the second of her clut',
  ring: 'GB 26 AL 017 and a chip 981 0000 1234 5678 of the left brea',
  species: 'hyacinth-macaw',
  peak: { g10: 10400, day: '2026-11-10' },
  feeds: ['early-morning', 'morning', 'midday', 'afternoon', 'evening', 'bedtime'].map((slot, place) => ({
    slot,
    time: `${String(6 + 3 * place).padStart(2, '0')}:30`,
    ml10: 375,
  })),
  drop_order: ['midday', 'afternoon', 'early-morning', 'evening', 'morning', 'bedtime'],
  contacts: ['breeder', 'breeder', 'avian-vet', 'avian-vet', 'emergency-vet', 'emergency-vet'].map((role) => ({
    role,
    name: 'A name that is as long as names may be here, sixty letters o',
    number: '+1 555 010 0100',
  })),
  breeder_hours: 'from eight to ten in the evening, on Sundays from ten to two',
  solids: LONG,
  note: LONG,
  note_for_chick: LONG,
  said: ['sex', 'wings', 'papers', 'takes-food', 'round-crop', 'after-refusal', 'powder-name', 'recipe', 'night', 'bath'].map((topic) => ({ topic, text: LONG })),
};

const MM = 96 / 25.4;

for (const [what, plan] of [
  ['filled', {}],
  ['fullest', FULLEST],
]) {
  for (const [paper, width, height] of [
    ['A5', 148, 210],
    ['A4', 210, 297],
  ]) {
    test(`the card on ${paper}, ${what}: two pages at most, and a square that is read at 150 dpi, blurred and turned`, async ({ bench }) => {
      const site = await bench.site();
      const breeder = await breederWith(bench, site, plan);
      await linkOf(breeder);
      const file = await fileOf(breeder, 'Card as a file to print');
      const dpi = 150 / 96;
      const { page: reader } = await bench.phone(site, {
        viewport: { width: Math.floor((width - 14) * MM), height: Math.floor((height - 14) * MM) },
        deviceScaleFactor: dpi,
      });
      const copy = join(bench.folder(), 'card.html');
      writeFileSync(copy, (await import('node:fs')).readFileSync(file));
      await reader.goto(`file://${copy}`);
      const pdf = await reader.pdf({ format: paper, preferCSSPageSize: false });
      writeFileSync(join(import.meta.dirname, 'shots', `card-${paper}-${what}.pdf`), pdf);
      const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g).length;
      assert.ok(pages <= 2, `${pages} pages`);
      await reader.emulateMedia({ media: 'print' });
      await shot(reader, `card-${paper}-${what}`);
      // The first page ends where the second begins.
      const first = await reader.evaluate(() => document.querySelector('.more').getBoundingClientRect().top);
      assert.ok(first <= (height - 14) * MM, `${first} px of ${(height - 14) * MM}`);
      const code = reader.locator('.code svg');
      const box = await code.boundingBox();
      assert.ok(box.width >= 60 * MM, `${box.width / MM} mm`);
      for (const number of await reader.locator('.number').all()) {
        const size = await number.evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
        // 14 pt are 18.7 px.
        assert.ok(size >= 18.7, `${size} px`);
      }
      // With the white that surrounds it on the page.
      const clip = { x: Math.max(0, box.x - 12), y: box.y - 12, width: box.width + 24, height: box.height + 24 };
      const picture = await reader.screenshot({ clip });
      for (const degrees of [0, 2, -2]) {
        const read = await decoded(breeder, picture, degrees, 0.8);
        assert.ok(read?.startsWith(`${site.url}#pl1q.`), `${degrees}°: ${read?.slice(0, 60)}`);
      }
      const owner = await ownerPhone(bench, site);
      await owner.goto(await decoded(breeder, picture));
      await started(owner);
      await owner.locator('.card-in__line').first().waitFor();
      const short = owner.getByText('This code holds what the first two days need');
      assert.equal(await short.count(), what === 'fullest' ? 1 : 0);
    });
  }
}

test('every screen prints with the name and the day, and without anything to press', async ({ bench }) => {
  const site = await bench.site();
  const page = await breederWith(bench, site);
  for (const route of ['now', 'weight', 'weaning', 'journal', 'handover', 'home', 'first-weeks', 'sources', 'settings']) {
    await go(page, `#/${route}`);
    await page.emulateMedia({ media: 'print' });
    const head = page.locator('.head');
    assert.match(plain(await head.innerText()).replaceAll(/\s+/g, ' '), /Saffron.*18 Nov 2026/, route);
    const pressed = await page.locator('button.button:visible, a.button:visible, .bottom-bar:visible, .dock:visible, .help:visible').count();
    assert.equal(pressed, 0, route);
    const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    assert.match(ground, /^rgb\(255, 255, 255\)$|^rgba\(0, 0, 0, 0\)$/, route);
    await shot(page, `print-${route}`);
    await page.emulateMedia({ media: 'screen' });
  }
});
