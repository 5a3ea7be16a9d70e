// English and Spanish: which is chosen, that it stays, and that no screen mixes them. How numbers and days
// are written is compared with the browser's own tables, which are CLDR's.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { leftBehind } from './glance.mjs';
import { clock, holdBack, overflow, shot, started, until, withoutWorker } from './harness.mjs';
import { go, kept, openApp, typeInChick } from './owner.mjs';
import { Script } from './script.mjs';
import { NOW, STATES, takeInText, walk, withLosingChick } from './states.mjs';

const tag = (page) => page.locator('html').getAttribute('lang');
const title = (page) => page.locator('#app h1').first().innerText();

const TITLES = { en: 'A chick is coming home', es: 'Llega un polluelo a casa' };
const assertLanguage = async (page, language) => {
  await page.locator('#app h1', { hasText: TITLES[language] }).waitFor();
  assert.equal(await tag(page), language);
};

for (const [locale, language] of [['en-GB', 'en'], ['en-US', 'en'], ['es-ES', 'es'], ['es-MX', 'es'], ['es', 'es'], ['fr-FR', 'en'], ['est-EE', 'en']]) {
  test(`a phone in ${locale} starts in ${language}, before and after the app is there`, async ({ bench }) => {
    const { site, context, page } = await withoutWorker(bench, { locale });
    const release = await holdBack(context, '**/*.wasm');
    await page.goto(site.url, { waitUntil: 'domcontentloaded' });
    assert.equal(await tag(page), language);
    const about = await page.locator('.first__about').innerText();
    assert.match(about, language === 'es' ? /^Lleva paso a paso la ficha/ : /^Takes you step by step/);
    release();
    await started(page);
    await assertLanguage(page, language);
  });
}

test('the last-known text follows a language chosen by hand', async ({ bench }) => {
  const { site, page } = await withoutWorker(bench, { locale: 'en-GB' });
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  const asOf = async () => (await leftBehind(page, 'as-of')).join();
  assert.match(await asOf(), /^As of /);
  await go(page, '#/settings');
  await page.getByRole('radio', { name: 'Español', exact: true }).check();
  await until('it is worded anew', async () => (await asOf()).startsWith('Lo último, '));
  assert.deepEqual(await leftBehind(page, 'level'), [['settled', 'Normal']]);
});

const chooseByHand = async (page, option, language) => {
  await go(page, '#/settings');
  await page.getByRole('radio', { name: option, exact: true }).check();
  await until('the page has changed its language', async () => (await tag(page)) === language);
  await go(page, '#/start');
  await assertLanguage(page, language);
};

for (const [locale, option, language] of [['en-GB', 'Español', 'es'], ['es-ES', 'English', 'en']]) {
  test(`${option}, chosen by hand on a phone in ${locale}, is kept over a reload and before the app`, async ({ bench }) => {
    const { site, context, page } = await withoutWorker(bench, { locale });
    await openApp(page, site);
    await chooseByHand(page, option, language);
    await page.reload();
    await started(page);
    await assertLanguage(page, language);
    bench.allow(/ERR_FAILED/, /thrown: .*fetch/, /Failed to fetch/);
    await context.route('**/*.wasm', (route) => route.abort());
    await page.reload();
    await page.locator('#trouble').waitFor();
    assert.equal(await tag(page), language);
    const isSpanish = language === 'es';
    assert.equal(await page.locator('#trouble-title').innerText(), isSpanish ? 'Perchlight no arrancó.' : 'Perchlight did not start.');
    assert.match(await page.locator('#trouble p[role="alert"]').innerText(), isSpanish ? /^Sus datos/ : /^Your records/);
    assert.match(await page.locator('.first__caution').first().innerText(), isSpanish ? /Perchlight no sustituye/ : /Perchlight is not/);
    await page.locator('#trouble summary').click();
    await shot(page, `without-app-${language}`);
  });
}

// Every text that is shown or read out, with what the screens share taken off: what was typed in.
const TYPED = /perchlight-[\w-]+\.png|Cinder|Saffron|(Made-up|Example) (breeder|vet|avian vet|night vet)|pellets|zzz|old\.json/g;
// Signs of units are the same in every language (SI brochure, 9th ed., 5.3; "min" and "h" too).
const MEASURES = /[\d.,:]+ (ml|min|h|g|kcal|oz)\b/g;
const texts = async (page) => {
  const found = await page.evaluate(() => {
    const all = [document.title];
    const nodes = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (nodes.nextNode()) {
      if (nodes.currentNode.parentElement.closest('#trouble, script, noscript') === null) {
        all.push(nodes.currentNode.data);
      }
    }
    for (const name of ['aria-label', 'alt', 'title', 'placeholder', 'aria-roledescription', 'aria-valuetext']) {
      for (const element of document.querySelectorAll(`[${name}]`)) {
        all.push(element.getAttribute(name));
      }
    }
    return all;
  });
  return found.map((text) => text.replace(/\s+/g, ' ').trim().replace(TYPED, '').replace(MEASURES, '')).filter((text) => /\p{L}{2}/u.test(text));
};

const wordsOf = (all) => new Set(all.flatMap((text) => text.toLowerCase().match(/\p{L}{4,}/gu) ?? []));

const collect = async (bench, locale) => {
  const page = await withLosingChick(bench, { locale });
  const found = new Map();
  await walk(page, STATES, async (name) => {
    found.set(name, await texts(page));
  });
  // The made-up chick, whose contacts and notes are words of the app.
  await go(page, '#/start');
  await page.locator('button.way').click();
  await page.locator('.banner[data-kind="demo"]').waitFor();
  for (const screen of ['now', 'weaning', 'journal', 'handover', 'plan', 'wrong']) {
    await go(page, `#/${screen}`);
    found.set(`made-up chick, ${screen}`, await texts(page));
  }
  return found;
};

// Texts and words that are right in both languages, each looked up: units and signs, and words that both share.
const SAME_TEXTS = new Set(['Perchlight', 'ml', 'oz', 'min', 'kcal', 'No', 'Plan', 'English', 'Español']);
// "chip", "cockatiel", "cola" (tail), "come" (eats), "decide", "internet", "manual", "metal", "normal", "pellets", "plan", "sale" (comes out) and "usual" are Spanish; "compare" is an order in both; Duerr, Gage, Rivera, Romagnano, Doneley, Groffen, Roudybush, Grau, Choi, Okos, Willsky and Jones are authors; Watchbird, Parrot pediatrics and Vet Times are titles.
const SAME_WORDS = new Set(['perchlight', 'kcal', 'safari', 'iphone', 'chip', 'normal', 'english', 'español', 'cockatiel', 'cola', 'come', 'decide', 'internet', 'pellets', 'sale', 'manual', 'metal', 'plan', 'usual', 'duerr', 'gage', 'rivera', 'romagnano', 'doneley', 'groffen', 'roudybush', 'grau', 'choi', 'okos', 'willsky', 'jones', 'watchbird', 'parrot', 'pediatrics', 'times', 'compare']);

test('no screen in Spanish holds a text or a word of the English one', async ({ bench }) => {
  test.setTimeout(180_000);
  const english = await collect(bench, 'en-GB');
  const spanish = await collect(bench, 'es-ES');
  const same = [];
  for (const [name, all] of english) {
    const there = new Set(spanish.get(name));
    assert.ok(there.size > 5, name);
    same.push(...all.filter((text) => there.has(text) && !SAME_TEXTS.has(text)).map((text) => `${name}: ${text}`));
  }
  assert.deepEqual([...new Set(same)], [], 'texts that are the same in both');
  const words = wordsOf([...spanish.values()].flat());
  assert.ok(words.size > 400, `${words.size} words`);
  const shared = [...wordsOf([...english.values()].flat())].filter((word) => words.has(word));
  const where = (word) => [...spanish.values()].flat().find((text) => wordsOf([text]).has(word));
  assert.deepEqual(shared.filter((word) => !SAME_WORDS.has(word)).map((word) => `${word}: ${where(word)}`), [], 'words in both');
});

test('in Spanish no screen scrolls sideways at 320 px with text at 200 %', async ({ bench }) => {
  test.setTimeout(240_000);
  const page = await withLosingChick(bench, { locale: 'es-ES', viewport: { width: 320, height: 640 } });
  await walk(page, STATES, async (name) => {
    await shot(page, `${name}-es-320`);
  });
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  });
  for (const { name, address } of STATES) {
    if (address !== null) {
      await go(page, address);
      await shot(page, `${name}-es-320-200`);
      assert.equal(await overflow(page), 0, name);
    }
  }
});

for (const [locale, language] of [['en-GB', 'en'], ['es-ES', 'es'], ['es-MX', 'es'], ['en-ZA', 'en']]) {
  test(`numbers and days are written as CLDR has them, ${locale}`, async ({ bench }) => {
    const site = await bench.site();
    const { page } = await bench.phone(site, { locale });
    await clock(page, NOW);
    await openApp(page, site);
    // One weighing in each month of the year before, on days that meet every day of the week.
    const script = new Script();
    script.added('2025-11-09T08:00', { hatched: '2025-08-01', reference: { g10: 10400, day: '2025-11-09' } });
    const days = ['2025-11-10', '2025-12-09', '2026-01-07', '2026-02-05', '2026-03-06', '2026-04-04', '2026-05-03', '2026-06-01', '2026-07-07', '2026-08-05', '2026-09-03', '2026-10-02'];
    days.forEach((day, index) => script.weighed(`${day}T12:00`, 1040 - index));
    await takeInText(page, script.backup());
    await kept(page);
    await go(page, '#/journal');
    for (let more = 0; more < 5 && (await page.locator('.journal-day').count()) < 13; more += 1) {
      await page.locator('main > button').last().click();
    }
    const written = (await page.locator('.journal-day h2').allInnerTexts()).reverse();
    // The order of day and month is ours in both languages; the names are CLDR's. CLDR's tables for "en", whose
    // September is Sep; British ones say Sept.
    const known = await page.evaluate(
      ([language, days]) => {
        const form = new Intl.DateTimeFormat(language, { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' });
        return days.map((day) => {
          const part = Object.fromEntries(form.formatToParts(new Date(day)).map(({ type, value }) => [type, value]));
          return `${part.weekday} ${part.day} ${part.month}`;
        });
      },
      [language, ['2025-11-09', ...days]],
    );
    assert.deepEqual(written, known);
    assert.equal(new Set(known.map((day) => day.split(' ')[0])).size, 7, 'every day of the week');
    assert.equal(new Set(known.map((day) => day.split(' ')[2])).size, 12, 'every month');

    // (1040 - 1029) / 1040 = 1.058 %.
    await go(page, '#/weight');
    const meaning = await page.locator('.verdict').innerText();
    const numbers = await page.evaluate((locale) => {
      const form = new Intl.NumberFormat(locale, { minimumFractionDigits: 1 });
      return [form.format(1.1)];
    }, locale);
    for (const number of numbers) {
      assert.ok(meaning.includes(`${number}\u00a0%`), `${number} in ${meaning}`);
    }
    // Four digits stay together in both, as CLDR has it for Spanish (minimum grouping digits 2) and the SI brochure
    // (9th ed., 5.4.4) for all.
    assert.match(await page.locator('.chart__point strong').innerText(), /, 1029\u00a0g$/);

    // What is typed may have either sign.
    for (const [typed, shown] of [['1.029,5', null], ['1029,5', 1029.5], ['1029.5', 1029.5]]) {
      await go(page, '#/weigh');
      await page.locator('#weight').fill(typed);
      await page.locator('input[name="crop"]').first().check();
      await page.locator('main button[type="submit"]').click();
      if (shown === null) {
        await until('a fault', async () => (await page.locator('#weight-fault').innerText()) !== '');
      } else {
        const text = await page.evaluate(([locale, shown]) => new Intl.NumberFormat(locale, { useGrouping: false }).format(shown), [locale, shown]);
        await page.locator('.weigh__kept strong', { hasText: text }).waitFor();
      }
      await go(page, '#/droppings');
    }
    assert.equal(await title(page), language === 'es' ? 'Heces' : 'Droppings');
  });
}
