// The first start by typing: what was typed stays, what is wrong stands beside its field, and what nobody is
// sure of is asked for. Help before there is a chick, and the breeder who wants to be asked.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { axe, clock, overflow, shot, started, until } from './harness.mjs';
import { day } from './frightened.mjs';
import { CHICK, eveningPhone, fillPlan, go, hasFault, kept, openApp, openWholePlan, plain, press, typeInChick } from './owner.mjs';
import { Script, clockAt, takeIn } from './script.mjs';

const SIZE = { viewport: { width: 360, height: 740 } };

const begun = async (bench, options = SIZE) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site, options);
  await openApp(page, site);
  await page.getByRole('link', { name: "I'll type it in" }).click();
  await page.locator('#name').waitFor();
  return page;
};

const answerWho = async (page) => {
  await page.locator('#name').fill(CHICK.name);
  await page.locator('#species').selectOption({ label: CHICK.species });
  await press(page, 'Next');
  await page.locator('#hatched').waitFor();
};

test('what was typed of a new chick stays when one leaves, and over a reload, and goes once it is kept', async ({ bench }) => {
  const page = await begun(bench);
  await answerWho(page);
  await page.locator('#hatched').fill(CHICK.hatched);
  await press(page, 'Next');
  await page.locator('#volume-2').fill('55');
  await page.reload();
  await started(page);
  // The group one was in, with what stood there; an amount that nobody typed is still empty.
  assert.equal(await page.locator('#volume-2').inputValue(), '55');
  assert.equal(await page.locator('#volume-3').inputValue(), '');
  await go(page, '#/start');
  await page.getByRole('link', { name: "I'll type it in" }).click();
  assert.equal(await page.locator('#volume-2').inputValue(), '55');
  await press(page, 'Back');
  assert.equal(await page.locator('#hatched').inputValue(), CHICK.hatched);
  await press(page, 'Back');
  assert.equal(await page.locator('#name').inputValue(), CHICK.name);
  await press(page, 'Next');
  await press(page, 'Next');
  for (const question of ['#volume-2', '#handover-weight', '#breeder-number']) {
    await page.locator(question).waitFor();
    await press(page, 'Not sure');
  }
  await page.locator('.top-bar', { hasText: CHICK.name }).waitFor();
  await kept(page);
  await go(page, '#/type-in');
  assert.equal(await page.locator('#name').inputValue(), '');
});

test('what is wrong in a group stands beside its field, and nothing goes on', async ({ bench }) => {
  const page = await begun(bench);
  await press(page, 'Next');
  await hasFault(page, /Choose the species/);
  await hasFault(page, /Give the chick a name/);
  await answerWho(page);
  await press(page, 'Next');
  await hasFault(page, /Choose the day, or tap Not sure/);
  await page.locator('#hatched').fill('2026-12-24');
  await press(page, 'Next');
  assert.equal(await page.locator('#hatched:focus').count(), 1);
  await page.locator('#hatched').fill(CHICK.hatched);
  await press(page, 'Next');
  await page.locator('#volume-2').fill('60');
  await press(page, 'Next');
  await hasFault(page, /Type every amount, or tap Not sure/);
  assert.equal(await page.locator('#volume-3').getAttribute('aria-invalid'), 'true');
  assert.equal(await page.locator('#volume-2').getAttribute('aria-invalid'), 'false');
  await page.locator('#volume-3').fill('40');
  await page.locator('#volume-6').fill('60');
  await page.locator('#time-6').fill('06:30');
  await press(page, 'Next');
  await hasFault(page, /the feeds must follow each other/);
  await page.locator('#time-6').fill('21:00');
  await press(page, 'Next');
  await page.locator('#handover-weight').fill('400');
  // 10 % of 400 g.
  await hasFault(page, /60\sml is a lot for 400\sg: usual is up to 40\sml/);
  await page.locator('#handover-weight').fill('1040');
  await press(page, 'Next');
  await page.locator('#breeder-number').fill('Ana');
  await press(page, 'Start');
  assert.equal(await page.locator('#breeder-number').getAttribute('aria-invalid'), 'true');
  await page.locator('#breeder-number').fill(CHICK.breeder[1]);
  await press(page, 'Start');
  await page.locator('.next-feed', { hasText: /60\sml/ }).waitFor();
});

test('an amount that nobody was sure of is asked for, with the number to call, and typed in when it is known', async ({ bench }) => {
  const page = await begun(bench);
  await answerWho(page);
  for (const question of ['#hatched', '#volume-2', '#handover-weight']) {
    await page.locator(question).waitFor();
    await press(page, 'Not sure');
  }
  await page.locator('#breeder-number').fill(CHICK.breeder[1]);
  await press(page, 'Start');
  const card = page.locator('[data-unknown="true"]');
  assert.match(plain(await card.innerText()), /Call the breeder before its next feed/);
  assert.equal(await card.locator('a.call').getAttribute('href'), 'tel:+15550100');
  assert.deepEqual(await axe(page), []);
  await shot(page, 'amount-not-known');
  await go(page, '#/guide');
  assert.match(await page.locator('main').innerText(), /Ask when and how much it is fed/);
  await go(page, '#/now');
  await card.getByRole('link', { name: 'Type in what the breeder says' }).click();
  await page.locator('#time-6').fill('21:00');
  await page.locator('#volume-6').fill('60');
  await press(page, 'Save the changes');
  await go(page, '#/now');
  await page.locator('.next-feed', { hasText: /60\sml/ }).waitFor();
});

test('Help before there is a chick takes telephone numbers, and the first start knows them', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site, SIZE);
  await openApp(page, site, '#/wrong');
  assert.equal(await page.locator('a.call').count(), 0);
  await page.locator('#vet-number').fill('vet');
  await press(page, 'Keep');
  assert.equal(await page.locator('#vet-number').getAttribute('aria-invalid'), 'true');
  await page.locator('#vet-number').fill('+1 555 0101');
  await press(page, 'Keep');
  const call = page.locator('.help-calls a.call');
  assert.equal(await call.getAttribute('href'), 'tel:+15550101');
  assert.equal(await page.locator('#vet-number').count(), 0);
  assert.equal(await page.locator('#breeder-number').count(), 1);
  assert.deepEqual(await axe(page), []);
  await page.getByRole('button', { name: 'Cold', exact: true }).click();
  assert.equal(await page.locator('.dock a.call').getAttribute('href'), 'tel:+15550101');
  await shot(page, 'help-without-a-chick');
  await page.reload();
  await started(page);
  assert.equal(await call.count(), 1);
  await go(page, '#/type-in');
  await answerWho(page);
  for (const question of ['#hatched', '#volume-2', '#handover-weight']) {
    await page.locator(question).waitFor();
    await press(page, 'Not sure');
  }
  assert.equal(await page.locator('#vet-number').inputValue(), '+1 555 0101');
});

test('where the breeder wants to be asked before a feed goes, the button asks and drops nothing', async ({ bench }) => {
  const site = await bench.site();
  const { page } = await bench.phone(site, SIZE);
  const at = (number, time) => `${day(number)}T${time}`;
  await clock(page, `${at(9, '15:30')}:00Z`);
  await openApp(page, site);
  const script = new Script(3).added(at(1, '09:00'), { ask_before_drop: true });
  script.fed(at(1, '14:05'), 'midday', 40).fed(at(1, '21:05'), 'bedtime', 60);
  // The criteria of a drop, as in the walk through a weaning: steady, midday left on three days, solids every day.
  [1040, 1042, 1041, 1043, 1041, 1042, 1041, 1040].forEach((grams, index) => {
    const number = index + 2;
    script.weighed(at(number, '06:45'), grams).fed(at(number, '07:05'), 'morning', 60);
    if (number < 7) {
      script.fed(at(number, '14:10'), 'midday', 40);
    } else {
      script.fed(at(number, '14:10'), 'midday', 15, 40);
    }
    script.droppings(at(number, '15:00')).solids(at(number, '15:05'), 'little');
    if (number < 9) {
      script.fed(at(number, '21:05'), 'bedtime', 60);
    }
  });
  await takeIn(page, script);
  await clockAt(page, `${at(9, '15:30')}:00Z`);
  await go(page, '#/weaning');
  const ask = page.locator('.dock').getByRole('link', { name: 'Ask Example breeder' });
  await ask.waitFor();
  assert.equal(await ask.getAttribute('href'), 'tel:+15550100');
  assert.equal(await page.locator('.dock .button').count(), 1);
  // The answer itself says so, and no line lets the feed go.
  assert.equal(plain(await page.locator('.weaning__answer').innerText()), 'The midday feed could go next. Ask Example breeder first.');
  assert.match(await page.locator('main').innerText(), /ask the breeder before a feed goes/);
  assert.doesNotMatch(await page.locator('main').innerText(), /You may drop/);
  await shot(page, 'weaning-ask');
  await go(page, '#/now');
  await page.locator('.to-do summary').click();
  const toDo = plain(await page.locator('.to-do').innerText());
  assert.match(toDo, /ask about a feed[\s\S]*The midday feed could go next\. Ask Example breeder first\./);
  assert.doesNotMatch(toDo, /a feed may go|You may drop/);
});

test('every group stands on one screen without a scroll, also with five feeds a day', async ({ bench }) => {
  const page = await begun(bench);
  const isWhole = async (name) => {
    const more = await page.locator('.scroll').evaluate((part) => part.scrollHeight - part.clientHeight);
    assert.ok(more <= 0, `${name}: ${more} px more`);
    assert.equal(await overflow(page), 0, name);
  };
  await isWhole('who');
  await answerWho(page);
  await isWhole('hatched');
  await press(page, 'Not sure');
  const counts = page.locator('input[name="feeds"]');
  for (let index = 0; index < 5; index += 1) {
    await counts.nth(index).check({ force: true });
    await until('the rows follow', async () => (await page.locator('.feed-line').count()) === index + 1);
    await isWhole(`${index + 1} feeds`);
  }
  await shot(page, 'group-five-feeds');
  for (const question of ['#handover-weight', '#vet-number']) {
    await press(page, 'Not sure');
    await page.locator(question).waitFor();
    await isWhole(question);
  }
});

test('at 320 px with text at 200 % every group can be answered, and none scrolls sideways', async ({ bench }) => {
  const page = await begun(bench, { viewport: { width: 320, height: 640 } });
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  });
  const isNarrow = async (name) => {
    const wider = await page.evaluate(() =>
      [document.documentElement, ...document.querySelectorAll('.main, .scroll')].map((part) => part.scrollWidth - part.clientWidth),
    );
    assert.ok(wider.every((pixels) => pixels <= 0), `${name}: ${wider}`);
  };
  await isNarrow('who');
  await answerWho(page);
  await isNarrow('hatched');
  await press(page, 'Not sure');
  await page.locator('input[name="feeds"]').nth(4).check({ force: true });
  await page.locator('#volume-1').fill('30');
  await isNarrow('fed');
  for (const question of ['#handover-weight', '#vet-number']) {
    await press(page, 'Not sure');
    await page.locator(question).waitFor();
    await isNarrow(question);
  }
});

test('who types every field at once is asked too whether it is home, and namesakes are told apart in the bar', async ({ bench }) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site, SIZE);
  await openApp(page, site);
  await openWholePlan(page);
  await fillPlan(page);
  await press(page, 'Start with these');
  const home = page.locator('[data-ask="home"]');
  assert.match(plain(await home.innerText()), /Is Ember home\?/);
  await home.locator('.button--main').click();
  await home.waitFor({ state: 'detached' });
  await page.locator('.next-feed', { hasText: /\d\sml/ }).waitFor();
  const bar = page.locator('.top-bar');
  assert.doesNotMatch(await bar.innerText(), /hatched|macaw/);
  // Another of that name: the first thing that differs is its species.
  await go(page, '#/start');
  await typeInChick(page, { ...CHICK, species: 'Cockatiel', weight: '90', feeds: [['2', '07:00', '5'], ['6', '21:00', '5']] });
  await bar.locator('.top-bar__beside', { hasText: 'Cockatiel' }).waitFor();
  await shot(page, 'bar-of-namesakes');
  assert.deepEqual(await axe(page), []);
});
