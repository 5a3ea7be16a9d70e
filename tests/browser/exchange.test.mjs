// Breeder and owner on two phones, without a server: card, report, table, changed plan, calendar.
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { test } from './fixtures.mjs';
import { offlineReady, started } from './harness.mjs';
import { CHICK, copied, eveningPhone, go, hasFault, kept, logNextFeed, openApp, openCard, typeInChick, weigh, weighTwice } from './owner.mjs';

const require = createRequire(import.meta.url);
const jsQR = require('jsqr');
const ICAL = require('ical.js').default ?? require('ical.js');

const downloaded = async (page, button) => {
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const download = await downloading;
  const stream = await download.createReadStream();
  return { name: download.suggestedFilename(), text: Buffer.concat(await stream.toArray()).toString('utf8'), path: await download.path() };
};

test('card, a day at the owner, report, breeder, changed plan, and back to the owner', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await typeInChick(breeder);
  await kept(breeder);
  await openCard(breeder);
  const card = await copied(breeder, 'Copy card as link');
  assert.ok(card.startsWith(`${site.url}#pl1c.`), card);

  // The owner opens the link: nothing is there before it is taken, and the address is cleared.
  const owner = await eveningPhone(bench, site);
  await owner.goto(card);
  await started(owner);
  await owner.locator('.question', { hasText: 'Ember' }).waitFor();
  assert.match(await owner.locator('.question').innerText(), /21:00/);
  // What the link holds stands above the way to anything else.
  assert.equal(await owner.locator('#paste').isVisible(), false);
  await owner.locator('summary', { hasText: 'Paste another text' }).click();
  assert.equal(await owner.locator('#paste').inputValue(), card.slice(site.url.length));
  assert.equal(await owner.locator('.bottom-bar').count(), 0);
  assert.doesNotMatch(owner.url(), /pl1c/);
  // Who opens a card has not seen the first screen: what must be read stands here too.
  assert.match(await owner.locator('.question .caution').innerText(), /burn, choke or starve/);
  await owner.getByRole('button', { name: 'Take it' }).click();
  await owner.locator('.top-bar', { hasText: 'Ember' }).waitFor();
  await logNextFeed(owner);
  await weighTwice(owner, 930);
  await kept(owner);
  await go(owner, '#/handover');
  const report = await downloaded(owner, 'Report for the breeder');
  assert.match(report.name, /\.html$/);
  assert.match(report.text, /930/);

  // Another chick is on the breeder's screen; a report opens its own.
  await go(breeder, '#/start');
  await typeInChick(breeder, { ...CHICK, name: 'Flint' });
  await breeder.locator('.top-bar', { hasText: 'Flint' }).waitFor();
  await go(breeder, '#/take-in');
  await breeder.locator('#file').setInputFiles(report.path);
  await breeder.locator('.question', { hasText: 'new here' }).waitFor();
  await breeder.getByRole('button', { name: 'Import' }).click();
  await breeder.locator('.top-bar', { hasText: 'Ember' }).waitFor();
  await breeder.locator('.lamp-band[data-level="call"]').waitFor();

  // The breeder lowers the limit of the syringe and sends the plan back.
  await go(breeder, '#/plan');
  await breeder.locator('#volume-6').fill('50');
  await breeder.locator('summary', { hasText: 'More of the plan' }).click();
  await breeder.locator('#note').fill('Bedtime a bit smaller. Ring me on Friday.');
  await breeder.getByRole('button', { name: 'Save the changes' }).click();
  await kept(breeder);
  await openCard(breeder);
  const change = await copied(breeder, 'Copy card as link');
  assert.ok(change.includes('#pl1c.'), change);
  await go(owner, '#/take-in');
  await owner.locator('#paste').fill(`Please change this:\n${change}`);
  await owner.getByRole('button', { name: 'Next' }).click();
  const preview = owner.locator('.question');
  await preview.waitFor();
  assert.match((await preview.innerText()).replaceAll('\u00a0', ' '), /60 ml.*50 ml/s);
  await owner.getByRole('button', { name: 'Use the changed plan' }).click();
  await owner.locator('.status-line', { hasText: 'Ember' }).waitFor();
  // The first card, found in the chat again, rolls nothing back.
  await go(owner, '#/take-in');
  await owner.locator('#paste').fill(card);
  await owner.getByRole('button', { name: 'Next' }).click();
  await owner.locator('.question', { hasText: 'Older than yours' }).waitFor();
  assert.equal(await owner.getByRole('button', { name: /^(Take it|Use the changed plan)$/ }).count(), 0);
  await go(owner, '#/now');
  assert.match(await owner.locator('main [data-note]').innerText(), /^From the breeder\s+Bedtime a bit smaller\. Ring me on Friday\.$/);
  await go(owner, '#/log/bedtime');
  assert.equal(await owner.locator('#taken').inputValue(), '50');
});

test('a second link to the other phone holds only what is new since the first', async ({ bench }) => {
  const site = await bench.site();
  const one = await eveningPhone(bench, site);
  await openApp(one, site);
  await typeInChick(one);
  await weigh(one, 1031);
  await kept(one);
  await go(one, '#/handover');
  const onlyNew = one.getByRole('button', { name: /^Copy only what is new since/ });
  assert.equal(await onlyNew.count(), 0, 'nothing was sent before');
  await one.clock.fastForward(60_000);
  const all = await copied(one, 'Copy report as link');

  const other = await eveningPhone(bench, site);
  await other.goto(all);
  await started(other);
  await other.getByRole('button', { name: 'Import' }).click();
  await other.locator('.top-bar', { hasText: 'Ember' }).waitFor();

  await one.clock.fastForward(60_000);
  await go(one, '#/now');
  await logNextFeed(one);
  await kept(one);
  await go(one, '#/handover');
  assert.match(await onlyNew.innerText(), /since Tue 24 Nov, 20:5\d$/);
  const since = await copied(one, /^Copy only what is new since/);
  assert.ok(since.startsWith(`${site.url}#pl1e.`), since);
  await go(other, '#/take-in');
  await other.locator('#paste').fill(since);
  await other.getByRole('button', { name: 'Next' }).click();
  // The plan still holds and goes along; the weighing of before does not.
  await other.locator('.question', { hasText: 'It holds 2 entries; new here: 1.' }).waitFor();
  await other.getByRole('button', { name: 'Import' }).click();
  await go(other, '#/journal');
  const words = await other.locator('.journal-line__words').allInnerTexts();
  assert.ok(words.some((line) => line.includes('Bedtime feed')), words.join('\n'));
  assert.ok(words.some((line) => line.includes('1031')), words.join('\n'));
});

test('two chicks stand in the breeder\'s table, the more worrying first', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await typeInChick(breeder);
  await go(breeder, '#/start');
  await typeInChick(breeder, { ...(await import('./owner.mjs')).CHICK, name: 'Flint' });
  await weigh(breeder, 900);
  await kept(breeder);
  await go(breeder, '#/handover');
  const names = await breeder.locator('.placed strong').allInnerTexts();
  assert.deepEqual(names, ['Flint', 'Ember']);
});

test('the card\'s picture is read from a screen of 320 px by another decoder', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site, { viewport: { width: 320, height: 720 }, deviceScaleFactor: 2 });
  await openApp(page, site);
  await typeInChick(page);
  await openCard(page);
  const picture = page.locator('.qr');
  const shot = await picture.screenshot();
  const { pixels, width, height } = await page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const context = canvas.getContext('2d');
    context.drawImage(image, 0, 0);
    const { data, width, height } = context.getImageData(0, 0, image.width, image.height);
    // As one text: a million numbers one by one take the browser's driver many seconds.
    const reader = new FileReader();
    reader.readAsDataURL(new Blob([data]));
    await new Promise((done) => {
      reader.onload = done;
    });
    return { pixels: reader.result.split(',')[1], width, height };
  }, shot.toString('base64'));
  const read = jsQR(Uint8ClampedArray.from(Buffer.from(pixels, 'base64')), width, height);
  assert.ok(read !== null, 'jsQR reads the picture');
  assert.ok(read.data.startsWith(`${site.url}#pl1q.`), read.data.slice(0, 60));
  assert.ok(read.version <= 20, `version ${read.version}`);

  const other = await eveningPhone(bench, site);
  await other.goto(read.data);
  await started(other);
  await other.getByRole('button', { name: 'Take it' }).waitFor();
});

test('the calendar file holds a daily event with an alarm for each feed and for the weighing', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await go(page, '#/handover');
  const { text } = await downloaded(page, 'Calendar file');
  const all = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
  const events = all.filter((event) => event.getFirstProperty('rrule') !== null);
  assert.equal(events.length, 4);
  for (const component of events) {
    const event = new ICAL.Event(component);
    assert.ok(event.startDate.zone === ICAL.Timezone.localTimezone || event.startDate.timezone === 'floating', 'floating');
    assert.equal(component.getAllSubcomponents('valarm').length, 1);
    assert.match(event.summary, /Ember/);
    const times = event.iterator();
    const [first, second] = [times.next(), times.next()];
    assert.equal(second.subtractDate(first).toSeconds(), 86_400);
  }
});

test('the report opens with scripts off and shows every typed text as text', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  const nasty = '<img src=x onerror=alert(1)>"&';
  await typeInChick(page, { ...(await import('./owner.mjs')).CHICK, name: nasty });
  await weigh(page, 1030);
  await go(page, '#/handover');
  for (const button of ['Report for the breeder', 'Page for the vet']) {
    const { text } = await downloaded(page, button);
    const { page: reader } = await bench.phone(site, { javaScriptEnabled: false });
    await reader.setContent(text);
    assert.equal(await reader.locator('img').count(), 0);
    assert.ok((await reader.locator('body').innerText()).includes(nasty), button);
  }
});

test('damaged, cut, newer and foreign texts each get their own sentence and change nothing', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await openCard(page);
  const link = await copied(page, 'Copy card as link');
  const text = link.slice(link.indexOf('#') + 1);
  const other = await eveningPhone(bench, site);
  await openApp(other, site, '#/take-in');
  const swapped = text.slice(0, -6) + (text.at(-6) === 'A' ? 'B' : 'A') + text.slice(-5);
  const sentences = new Set();
  for (const broken of [swapped, text.slice(0, 60), text.replace('pl1c', 'pl9c'), 'nothing of ours']) {
    await other.locator('#paste').fill(broken);
    await other.getByRole('button', { name: 'Next' }).click();
    await hasFault(other, /Nothing was changed/);
    sentences.add(await other.locator('#paste-fault').innerText());
    assert.equal(await other.locator('#paste').inputValue(), broken);
    assert.equal(await other.locator('.question').count(), 0);
  }
  assert.ok(sentences.size >= 3, [...sentences].join('\n'));
});

test('a card is taken without a network', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await openCard(page);
  const link = await copied(page, 'Copy card as link');
  const owner = await eveningPhone(bench, site);
  await openApp(owner, site);
  await offlineReady(owner);
  await site.stop();
  await owner.goto(link);
  await owner.getByRole('button', { name: 'Take it' }).click();
  await owner.locator('.top-bar', { hasText: 'Ember' }).waitFor();
});
