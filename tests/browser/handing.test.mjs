// Files on their way out: made on the tap, shared or saved or shown, and the sentence about it.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, shot, started, until } from './harness.mjs';
import { CHICK, copied, eveningPhone, fillPlan, go, kept, openApp, openCard, openWholePlan, plain, press, typeInChick, weigh } from './owner.mjs';

// A share sheet as Chromium's on Android: it takes files by ending and type (Chromium's
// share_service_impl.cc lists them; here those that the app makes) and ends as `outcome` says.
const withShareSheet = (page, outcome) =>
  page.addInitScript((outcome) => {
    window.shared = [];
    const takes = { png: 'image/png', html: 'text/html', txt: 'text/plain', csv: 'text/csv', pdf: 'application/pdf' };
    const isTaken = (file) => takes[file.name.split('.').pop()] === file.type;
    Object.defineProperty(navigator, 'canShare', { value: (data) => [...data.files].every(isTaken) });
    Object.defineProperty(navigator, 'share', {
      value: async (data) => {
        if (!navigator.userActivation.isActive) {
          throw new DOMException('no tap', 'NotAllowedError');
        }
        if (outcome !== 'taken') {
          throw new DOMException('', outcome);
        }
        for (const file of data.files) {
          window.shared.push({ name: file.name, type: file.type, text: data.text, bytes: [...new Uint8Array(await file.arrayBuffer())] });
        }
      },
    });
  }, outcome);

const shared = async (page) => {
  await until('the sheet has the file', () => page.evaluate(() => window.shared.length > 0));
  return page.evaluate(() => window.shared);
};

const download = async (page, act) => {
  const downloading = page.waitForEvent('download');
  await act();
  const file = await downloading;
  return { name: file.suggestedFilename(), path: await file.path() };
};

const answer = (page, words) => page.locator('.handed', { hasText: words }).last().waitFor();

// Each file with its button; the endings are those that Chromium's sheet takes or not.
const SHAREABLE = ['Report for the breeder', 'Page for the vet', 'Weights (CSV)', 'Feeds (CSV)', 'Droppings (CSV)'];
const SAVED = ['Calendar file', 'Remove them again', 'Save a backup file'];

test('a share sheet gets what it takes, the rest is saved, and a sentence says which', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await withShareSheet(page, 'taken');
  await openApp(page, site);
  await typeInChick(page);
  await weigh(page, 1030);
  await go(page, '#/handover');
  for (const button of SHAREABLE) {
    await page.evaluate(() => {
      window.shared = [];
    });
    await press(page, button);
    const [file] = await shared(page);
    assert.match(file.name, /^perchlight-ember-/);
    assert.ok(file.bytes.length > 20, button);
    await answer(page, 'Handed to the app you chose. Send it there.');
  }
  for (const button of SAVED) {
    const file = await download(page, () => press(page, button));
    assert.match(file.name, /\.(ics|json)$/);
    await answer(page, `Saved as ${file.name}`);
  }
  await shot(page, 'handing-out');
});

test('a cancelled share says so and offers to save the file', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await withShareSheet(page, 'AbortError');
  await openApp(page, site);
  await typeInChick(page);
  await go(page, '#/handover');
  await press(page, 'Report for the breeder');
  await answer(page, 'Cancelled: nothing was sent');
  const file = await download(page, () => press(page, 'Save it as a file instead'));
  assert.match(file.name, /report.*\.html$/);
  await answer(page, `Saved as ${file.name}`);
});

test('a share that the system refuses becomes a download', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await withShareSheet(page, 'NotAllowedError');
  await openApp(page, site);
  await typeInChick(page);
  await go(page, '#/handover');
  const file = await download(page, () => press(page, 'Weights (CSV)'));
  await answer(page, `Saved as ${file.name}`);
});

test('where neither works the text is shown to be copied', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await page.evaluate(() => {
    URL.createObjectURL = () => {
      throw new Error('no');
    };
  });
  await go(page, '#/handover');
  await press(page, 'Save a backup file');
  const text = page.getByRole('textbox', { name: 'The file as text' });
  await text.waitFor();
  assert.match(await text.inputValue(), /^\{"v":1/);
  await answer(page, 'Copy the text below');
});

test('the opened card stays open when the minute passes', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await openCard(page);
  await page.locator('.qr').waitFor();
  await page.clock.fastForward('00:03:00');
  await page.locator('.qr').waitFor();
  assert.ok(await page.locator('details.group').first().evaluate((card) => card.open));
});

for (const [locale, words] of [
  ['en-GB', { send: 'Send chart', hold: 'press and hold', meaning: '5 g (0.5 %) below handover', chart: 'Weight chart' }],
  ['es-ES', { send: 'Enviar gráfico', hold: 'mantenga pulsada', meaning: '5 g (0,5 %) menos que en la entrega', chart: 'Gráfico de peso' }],
]) {
  test(`the weight picture is a sharp PNG that says what it means (${locale})`, async ({ bench }) => {
    const site = await bench.site();
    const page = await eveningPhone(bench, site);
    await withShareSheet(page, 'taken');
    await openApp(page, site);
    await typeInChick(page);
    await weigh(page, 1035);
    await kept(page);
    if (locale === 'es-ES') {
      await go(page, '#/settings');
      await page.getByRole('radio', { name: 'Español' }).check();
    }
    await go(page, '#/weight');
    await page.locator('[data-send="true"]').waitFor();
    await press(page, words.send);
    const image = page.locator('.picture__image');
    await image.waitFor();
    const alt = (await image.getAttribute('alt')).replaceAll('\u00a0', ' ');
    // 1040 to 1035 g: 5 / 1040 = 0.48 %.
    assert.ok(alt.startsWith(words.chart) && alt.includes(words.meaning), alt);
    const caption = (await page.locator('.picture figcaption').innerText()).replaceAll('\u00a0', ' ');
    assert.ok(caption.includes(words.meaning), caption);
    assert.ok((await page.locator('.hint', { hasText: words.hold }).count()) > 0);
    await image.scrollIntoViewIfNeeded();
    await shot(page, `weight-picture-${locale}`);
    assert.deepEqual(await axe(page), []);
    const [file] = await shared(page);
    assert.match(file.name, /weight.*\.png$/);
    assert.ok(file.text.replaceAll('\u00a0', ' ').includes(words.meaning), file.text);
    const bytes = Buffer.from(file.bytes);
    // PNG specification, 5.2 and 11.2.2: the signature, then the length, IHDR, width and height.
    assert.deepEqual([...bytes.subarray(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10]);
    const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
    const drawn = await page.evaluate(() => {
      const { width } = document.querySelector('.chart__picture svg').viewBox.baseVal;
      return width;
    });
    assert.ok(2 * drawn <= width && width <= 3 * drawn, `${width} for ${drawn}`);
    assert.ok(height > width / 2);
    // Paper, ink and the limit's brown are all there.
    const colours = await image.evaluate((image) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
      const pen = canvas.getContext('2d');
      pen.drawImage(image, 0, 0);
      const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
      const counts = {};
      for (let at = 0; at < data.length; at += 4) {
        const colour = [...data.subarray(at, at + 3)].map((part) => part.toString(16).padStart(2, '0')).join('');
        counts[colour] = (counts[colour] ?? 0) + 1;
      }
      return counts;
    });
    for (const colour of ['ffffff', '1c2a30', 'a34c00']) {
      assert.ok(colours[colour] > 100, `${colour}: ${colours[colour]}`);
    }
    assert.ok(colours.ffffff < width * height * 0.98, 'not blank');
  });
}

test('an earlier card is the template of the next, without what belongs to one bird', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await openWholePlan(breeder);
  await fillPlan(breeder);
  await breeder.locator('#vet-number').fill('+1 555 0111');
  await breeder.locator('details.group > summary', { hasText: 'More of the plan' }).click();
  await breeder.locator('#ring').fill('GB 12');
  await breeder.locator('#powder').fill('28');
  await press(breeder, 'Start with these');
  await kept(breeder);
  await openCard(breeder);
  await press(breeder, 'New card from this one');
  await breeder.locator('#name').waitFor();
  const value = (id) => breeder.locator(`#${id}`).inputValue();
  for (const id of ['name', 'hatched', 'handover-weight', 'ring', 'vet-number', 'night-vet-number']) {
    assert.equal(await value(id), '', id);
  }
  assert.equal(await breeder.locator('#species option:checked').innerText(), CHICK.species);
  assert.deepEqual([await value('time-6'), await value('volume-6'), await value('breeder-number'), await value('powder')], ['21:00', '60', '+1 555 0100', '28']);
  await breeder.locator('#name').fill('Flint');
  await press(breeder, 'Start with these');
  await breeder.locator('.top-bar', { hasText: 'Flint' }).waitFor();
  await kept(breeder);
  // The first chick is untouched, and the start screen offers both as templates.
  await go(breeder, '#/start');
  // Both may be added in the same second, and then stand in either order.
  const names = await breeder.locator('section[aria-labelledby="templates"] button').allInnerTexts();
  assert.deepEqual(names.sort(), ['Ember', 'Flint']);
  await shot(breeder, 'templates');
});

test('numbers of a plan stand beside their limits while they are typed', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await openWholePlan(page);
  await fillPlan(page, { ...CHICK, weight: '1000' });
  const checks = async (kind) => (await page.locator(`.plan-checks .${kind}`).allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
  assert.match(await checks('hint'), /Largest feed 60 ml at 1000 g: usual up to 100 ml \(10 %\), at most 120 ml \(12 %, our own limit\)/);
  assert.match(await checks('hint'), /Night without a feed: 10 h \(at least 6 h\)/);
  assert.match(await checks('hint'), /Served at 39.0.*40.5 °C/);
  assert.equal(await checks('fault'), '');
  await page.locator('#volume-6').fill('121');
  await page.locator('#time-2').fill('04:00');
  await page.locator('#time-6').fill('22:30');
  assert.match(await checks('fault'), /121 ml.*“Call the breeder” at once/s);
  assert.match(await checks('fault'), /5 h 30 min \(at least 6 h\)/);
  await page.locator('.plan-checks').scrollIntoViewIfNeeded();
  await shot(page, 'plan-checks');
  await page.locator('#volume-6').fill('101');
  assert.match(await checks('fault'), /“Watch” at once/);
});

test('a default stays marked until it is confirmed, on the card and at the owner', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await typeInChick(breeder);
  await go(breeder, '#/handover');
  const open = () => breeder.locator('details.group > summary', { hasText: 'Handover card' }).click();
  const link = () => copied(breeder, 'Copy card as link');
  const seenByOwner = async (card) => {
    const owner = await eveningPhone(bench, site);
    await owner.goto(card);
    await started(owner);
    const folded = await owner.locator('.card-in').innerText();
    await owner.locator('.card-in details > summary').click();
    assert.equal(/has not confirmed/.test(folded), /usual value, not confirmed/.test(await owner.locator('.question').innerText()));
    return { owner, text: await owner.locator('.question').innerText() };
  };
  await open();
  assert.match(await breeder.locator('.question').innerText(), /usual values that your breeder has not confirmed/);
  const before = await seenByOwner(await link());
  assert.match(before.text, /usual value, not confirmed by the breeder/);
  assert.match(before.text.replaceAll('\u00a0', ' '), /Largest feed 60 ml at 1040 g/);
  await before.owner.locator('.plan-checks').scrollIntoViewIfNeeded();
  await shot(before.owner, 'landing-checks');
  // One field after the other; what was not confirmed stays marked.
  const confirms = breeder.getByRole('button', { name: /The breeder says so$/ });
  const fields = await confirms.count();
  assert.ok(fields >= 8, `${fields} fields`);
  for (let left = fields; left > 0; left -= 1) {
    assert.equal(await confirms.count(), left);
    await confirms.first().click();
    await kept(breeder);
    if (!(await breeder.locator('.qr').isVisible())) {
      await open();
    }
    if (left === 2) {
      const some = await seenByOwner(await link());
      assert.equal(some.text.match(/usual value, not confirmed/g).length, 1, some.text);
    }
  }
  assert.equal(await breeder.locator('.question').count(), 0);
  const after = await seenByOwner(await link());
  assert.doesNotMatch(after.text, /usual value/);
});

test('what is said on the telephone stands on the card, and what tells of one chick not on the next card', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await typeInChick(breeder);
  await go(breeder, '#/plan');
  await breeder.locator('summary', { hasText: 'More of the plan' }).click();
  const said = {
    sex: 'hen, feather test',
    wings: 'flies',
    papers: 'PBFD negative',
    'takes-food': 'slowly, from its left',
    'round-crop': 'like a golf ball',
    'after-refusal': 'wait for me',
    'powder-name': 'made-up powder, large parrots',
    recipe: '1 cup to 2 of water',
    night: 'half covered',
    bath: 'warm spray at noon',
  };
  for (const [id, text] of Object.entries(said)) {
    await breeder.locator(`#${id}`).fill(text);
  }
  await breeder.locator('#tool').selectOption({ label: 'Bent spoon' });
  await breeder.locator('#scale').fill('5');
  // Planned: midday, morning, bedtime.
  await press(breeder, 'bedtime: Let it go earlier');
  await press(breeder, 'Save the changes');
  await kept(breeder);
  await openCard(breeder);
  const card = await copied(breeder, 'Copy card as link');
  const owner = await eveningPhone(bench, site);
  await owner.goto(card);
  await started(owner);
  const question = owner.locator('.card-in');
  await question.locator('details > summary').click();
  const seen = (await question.innerText()).replaceAll('\u00a0', ' ');
  for (const text of [...Object.values(said), 'Bent spoon', '5 g', 'midday, bedtime, morning']) {
    assert.ok(seen.includes(text), `${text}: ${seen}`);
  }
  await go(breeder, '#/handover');
  await press(breeder, 'New card from this one');
  await breeder.locator('summary', { hasText: 'More of the plan' }).click();
  for (const [id, text] of Object.entries(said)) {
    const isOfChick = ['sex', 'wings', 'papers', 'takes-food', 'round-crop'].includes(id);
    assert.equal(await breeder.locator(`#${id}`).inputValue(), isOfChick ? '' : text, id);
  }
});

test('a card opened from a link says where an iPhone keeps it and gives the link back', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  await typeInChick(breeder);
  await openCard(breeder);
  const card = await copied(breeder, 'Copy card as link');
  const owner = await eveningPhone(bench, site);
  await owner.goto(card);
  await started(owner);
  await owner.locator('.question', { hasText: 'Ember' }).waitFor();
  const hint = owner.locator('.hint', { hasText: 'Safari, which keeps separate records' });
  assert.ok(await hint.isVisible());
  await shot(owner, 'landing');
  await press(owner, 'Copy the link again');
  await owner.getByRole('button', { name: 'Copied.' }).waitFor();
  const again = await owner.evaluate(() => navigator.clipboard.readText());
  const installed = await eveningPhone(bench, site);
  await openApp(installed, site, '#/take-in');
  assert.equal(await installed.getByRole('button', { name: 'Copy the link again' }).count(), 0);
  await installed.locator('#paste').fill(again);
  await press(installed, 'Next');
  await installed.getByRole('button', { name: 'Take it' }).waitFor();
});

test('a card that could hurt does not go out before it is changed or said again', async ({ bench }) => {
  const site = await bench.site();
  const breeder = await eveningPhone(bench, site);
  await openApp(breeder, site);
  // 07:00 after 18:00 are 13 h without a feed; 12 h is the limit.
  const feeds = [['2', '07:00', '60'], ['6', '18:00', '60']];
  await typeInChick(breeder, { ...CHICK, feeds });
  await openCard(breeder);
  const stop = breeder.locator('[data-ask="stop"]');
  assert.match(plain(await stop.innerText()), /Night without a feed: 13 h \(usually up to 12 h, our own limit\)/);
  assert.equal(await breeder.locator('.qr').isVisible(), false);
  assert.equal(await breeder.getByRole('button', { name: 'Copy card as link' }).isVisible(), false);
  await press(breeder, 'I know, send it so');
  await breeder.locator('.qr').waitFor();
  assert.equal(await stop.count(), 0);
  // Without a number to call only a change helps.
  await go(breeder, '#/plan');
  await breeder.locator('#breeder-number').fill('');
  await press(breeder, 'Save the changes');
  await kept(breeder);
  await openCard(breeder);
  assert.match(await stop.innerText(), /Type your telephone number/);
  assert.equal(await breeder.getByRole('button', { name: 'I know, send it so' }).count(), 0);
});
