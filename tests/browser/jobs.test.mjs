// The counted jobs of an owner: how many taps, typed characters, screens and scrolls each takes on a phone of
// 360 × 740, and that each can be done at 320 × 640 with text at 200 %. `make jobs` writes the table.
import assert from 'node:assert/strict';
import { appendFileSync } from 'node:fs';
import { test } from './fixtures.mjs';
import { clock, shot, started } from './harness.mjs';
import { CHICK, copied, eveningPhone, kept, openApp, openCard, plain, typeInChick } from './owner.mjs';
import { day, quietDays } from './frightened.mjs';
import { clockAt, takeIn } from './script.mjs';
import { SCREENS } from './states.mjs';

const USUAL = { viewport: { width: 360, height: 740 } };
const SMALL = { viewport: { width: 320, height: 640 }, isSmall: true };

// Whether the middle and the corners of an element are on screen and not under anything else.
const isReachable = (locator) =>
  locator.evaluate((element) => {
    const { left, top, right, bottom } = element.getBoundingClientRect();
    const inset = 4;
    const points = [
      [(left + right) / 2, (top + bottom) / 2],
      [left + inset, top + inset],
      [right - inset, bottom - inset],
    ];
    const isOwn = (found) => found !== null && (element.contains(found) || found.contains(element) || found.closest('label')?.contains(element));
    return points.every(([x, y]) => x >= 0 && y >= 0 && x < innerWidth && y < innerHeight && isOwn(document.elementFromPoint(x, y)));
  });

// One person's finger: every tap goes through it, and a tap on what is not wholly on screen is a scroll before.
class Finger {
  constructor(page) {
    this.page = page;
    this.counted = { taps: 0, characters: 0, screens: 0, scrolls: 0 };
    this.place = null;
  }

  // Counts the screen that is there now, where it is another one than before.
  async look() {
    const place = await this.page.evaluate(() => `${location.hash} ${document.querySelector('main h1')?.textContent}`);
    if (place !== this.place) {
      this.place = place;
      this.counted.screens += 1;
    }
  }

  async reach(locator) {
    await locator.waitFor();
    await this.look();
    if (!(await isReachable(locator))) {
      this.counted.scrolls += 1;
      // On whatever is there now: the screen may have been drawn anew since.
      await locator.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    }
  }

  async tap(locator) {
    await this.reach(locator);
    this.counted.taps += 1;
    await locator.tap();
  }

  async type(locator, text) {
    await this.tap(locator);
    this.counted.characters += text.length;
    await locator.pressSequentially(text);
  }

  // The phone's own list or calendar: one tap opens it, one chooses.
  async choose(locator, act) {
    await this.tap(locator);
    this.counted.taps += 1;
    await act(locator);
  }

  button(name) {
    return this.page.getByRole('button', { name, exact: true });
  }
}

// Tells what was counted on the usual phone, and holds it to its limits.
const tell = (job, { most, scrolls: mostScrolls = 0 }, finger) => {
  const { taps, characters, screens, scrolls } = finger.counted;
  if (process.env.JOB_LINES !== undefined) {
    appendFileSync(process.env.JOB_LINES, `${JSON.stringify({ job, most, taps, characters, screens, scrolls })}\n`);
  }
  assert.ok(taps <= most, `${job}: ${taps} taps, at most ${most}`);
  assert.ok(scrolls <= mostScrolls, `${job}: ${scrolls} scrolls, at most ${mostScrolls}`);
};

const large = (page) =>
  page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('html { font-size: 200%; }');
    document.adoptedStyleSheets = [sheet];
  });

// A phone in the evening with the app open, at an address if one is given.
const evening = async (bench, phone, address) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site, { viewport: phone.viewport });
  await openApp(page, site, address);
  if (phone.isSmall) {
    await large(page);
  }
  return { site, page, finger: new Finger(page) };
};

// Nine quiet days, the tenth as far as it has come: weighed at 1041 g and fed twice by the afternoon.
const until = (time) => {
  const script = quietDays();
  const today = (at) => `${day(10)}T${at}`;
  if (time > '07:05') {
    script.weighed(today('06:45'), 1041).note(today('06:50'), 'crop-seen', { state: 'flat', feel: 'soft' }).fed(today('07:05'), 'morning', 60);
  }
  if (time > '14:05') {
    script.fed(today('14:05'), 'midday', 40);
  }
  return script;
};

// A phone that holds these days, on the tenth at that time.
const atHome = async (bench, phone, time) => {
  const site = await bench.site();
  const { page } = await bench.phone(site, { viewport: phone.viewport });
  await clock(page, `${day(10)}T${time}:00Z`);
  await openApp(page, site);
  await takeIn(page, until(time));
  // Who holds the phone was answered ten days ago.
  const role = page.locator('[data-ask="role"]');
  await role.getByRole('button', { name: 'It is mine: this phone is new' }).click();
  await role.waitFor({ state: 'detached' });
  // What the taking in said is gone by now.
  await page.locator('.status-line button[aria-label="Close"]').click();
  await clockAt(page, `${day(10)}T${time}:00Z`);
  if (phone.isSmall) {
    await large(page);
  }
  return { page, finger: new Finger(page) };
};

const home = async (page, finger) => {
  await finger.tap(page.locator('[data-ask="home"] .button--main'));
  await page.locator('[data-ask="home"]').waitFor({ state: 'detached' });
};

const JOBS = [
  {
    job: 'first start by typing, until the plan is kept and the arrival answered',
    most: 20,
    act: async (bench, phone) => {
      const { page, finger } = await evening(bench, phone);
      await finger.tap(page.locator('.caution .button'));
      await finger.tap(page.getByRole('link', { name: "I'll type it in" }));
      await finger.type(page.locator('#name'), CHICK.name);
      await finger.choose(page.locator('#species'), (list) => list.selectOption({ label: CHICK.species }));
      await finger.tap(finger.button('Next'));
      await finger.choose(page.locator('#hatched'), (field) => field.fill(CHICK.hatched));
      await finger.tap(finger.button('Next'));
      for (const [row, , amount] of CHICK.feeds) {
        assert.equal(await page.locator(`#volume-${row}`).inputValue(), '', 'an amount is never preset');
        await finger.type(page.locator(`#volume-${row}`), amount);
      }
      await finger.tap(finger.button('Next'));
      await finger.type(page.locator('#handover-weight'), CHICK.weight);
      await finger.tap(finger.button('Next'));
      await finger.type(page.locator('#breeder-name'), CHICK.breeder[0]);
      await finger.type(page.locator('#breeder-number'), CHICK.breeder[1]);
      await finger.tap(finger.button('Start'));
      await home(page, finger);
      await page.locator('.next-feed', { hasText: /\d\sml/ }).waitFor();
      await kept(page);
      return finger;
    },
  },
  {
    job: 'first start with "Not sure" wherever it stands',
    most: 14,
    act: async (bench, phone) => {
      const { page, finger } = await evening(bench, phone);
      await finger.tap(page.locator('.caution .button'));
      await finger.tap(page.getByRole('link', { name: "I'll type it in" }));
      await finger.type(page.locator('#name'), CHICK.name);
      await finger.choose(page.locator('#species'), (list) => list.selectOption({ label: CHICK.species }));
      await finger.tap(finger.button('Next'));
      for (const question of ['#hatched', '#volume-2', '#handover-weight', '#breeder-number']) {
        await page.locator(question).waitFor();
        await finger.tap(finger.button('Not sure'));
      }
      await home(page, finger);
      // Nobody said how much: it is asked for, and no amount stands there.
      const card = page.locator('[data-unknown="true"]');
      await card.waitFor();
      assert.doesNotMatch(await card.innerText(), /\d+\s*ml/);
      await kept(page);
      return finger;
    },
  },
  {
    job: "the breeder's card as a link, until the plan is kept and the arrival answered",
    most: 3,
    act: async (bench, phone) => {
      const breeder = await evening(bench, USUAL);
      await typeInChick(breeder.page);
      await kept(breeder.page);
      await openCard(breeder.page);
      const link = await copied(breeder.page, 'Copy card as link');
      const page = await eveningPhone(bench, breeder.site, { viewport: phone.viewport });
      await page.goto(link);
      await started(page);
      if (phone.isSmall) {
        await large(page);
      }
      const finger = new Finger(page);
      await finger.tap(page.locator('.dock .button--main'));
      await home(page, finger);
      await kept(page);
      return finger;
    },
  },
  {
    job: "bedtime feed: the plan's amount, given at its time",
    most: 1,
    act: async (bench, phone) => {
      const { page, finger } = await atHome(bench, phone, '20:55');
      await clockAt(page, `${day(10)}T21:02:00Z`);
      await finger.tap(finger.button('60 ml given'));
      await page.locator('.status-line', { hasText: /Bedtime feed, 60\sml/ }).waitFor();
      return finger;
    },
  },
  {
    job: 'bedtime feed: before its time, or another amount',
    most: 2,
    act: async (bench, phone) => {
      const { page, finger } = await atHome(bench, phone, '20:40');
      await finger.tap(page.locator('.dock a[href^="#/log"]'));
      await finger.tap(finger.button('Done'));
      await page.locator('.status-line', { hasText: /Bedtime feed, 60\sml/ }).waitFor();
      return finger;
    },
  },
  {
    job: 'morning weight, beside its digits',
    most: 2,
    act: async (bench, phone) => {
      const { page, finger } = await atHome(bench, phone, '06:45');
      await finger.tap(page.locator('.dock a[href="#/weigh"]'));
      for (const digit of '1041') {
        await finger.reach(page.locator('.pad').getByRole('button', { name: digit, exact: true }));
        await page.locator('.pad').getByRole('button', { name: digit, exact: true }).tap();
        finger.counted.characters += 1;
      }
      await finger.tap(finger.button('Keep'));
      await page.locator('.weigh__kept', { hasText: /1,?041/ }).waitFor();
      return finger;
    },
  },
  {
    job: '"is the weight still normal?"',
    most: 0,
    act: async (bench, phone) => {
      const { page, finger } = await atHome(bench, phone, '12:00');
      const sentence = page.locator('.state', { hasText: /1,?041\sg|1041/ });
      await finger.reach(sentence);
      assert.match(plain(await sentence.innerText()), /^Settled\. 1041 g this morning/);
      return finger;
    },
  },
  {
    job: 'report to the breeder when it is due, from Now',
    most: 1,
    act: async (bench, phone) => {
      const { page, finger } = await atHome(bench, phone, '12:00');
      await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
      // Without a share sheet the words with their link are copied.
      await finger.tap(page.locator('.to-do').getByRole('button', { name: 'Send report' }));
      await page.locator('.to-do', { hasText: 'Copied.' }).waitFor();
      assert.match(await page.evaluate(() => navigator.clipboard.readText()), /^Cinder, day \d+: 1041.g.*\n.*#pl/s);
      return finger;
    },
  },
  {
    job: 'weight chart to the breeder, from Now',
    most: 2,
    act: async (bench, phone) => {
      const { page, finger } = await atHome(bench, phone, '12:00');
      await finger.tap(page.locator('.bottom-bar a[href="#/weight"]'));
      await finger.tap(page.locator('[data-send="true"]'));
      await page.locator('.picture__image').waitFor();
      return finger;
    },
  },
];

for (const { job, most, scrolls, act } of JOBS) {
  test(`job: ${job}, in ${most} taps or fewer`, async ({ bench }) => {
    const finger = await act(bench, USUAL);
    tell(job, { most, scrolls }, finger);
  });

  test(`job at 320 px with text at 200 %: ${job}`, async ({ bench }) => {
    const finger = await act(bench, SMALL);
    // Scrolling is a price there, more taps are not.
    assert.ok(finger.counted.taps <= most);
  });
}

const RINGING = 'worrying sign, until the telephone rings, from any screen';
const ANSWERED = 'worrying sign, looked up before the telephone rings';

test(`job: ${RINGING}`, async ({ bench }) => {
  test.setTimeout(120_000);
  const { page } = await atHome(bench, USUAL, '20:55');
  await page.evaluate(() => addEventListener('click', (event) => event.target.closest('a.call') && event.preventDefault()));
  let worst = new Finger(page);
  for (const name of SCREENS.filter((name) => name !== 'wrong')) {
    await page.evaluate((hash) => {
      location.hash = hash;
    }, `#/${name}`);
    const finger = new Finger(page);
    await finger.tap(page.locator('.help'));
    const call = page.locator('a.call').first();
    await finger.tap(call);
    assert.match(await call.getAttribute('href'), /^tel:\+1555010[12]$/, name);
    assert.equal(finger.counted.scrolls, 0, name);
    worst = finger.counted.taps > worst.counted.taps ? finger : worst;
    await page.locator('.help').tap();
  }
  tell(RINGING, { most: 2 }, worst);
});

test(`job: ${ANSWERED}`, async ({ bench }) => {
  const { page, finger } = await atHome(bench, USUAL, '20:55');
  await finger.tap(page.locator('.help'));
  await finger.tap(finger.button('Cold'));
  await finger.tap(page.locator('.dock a.call').first());
  tell(ANSWERED, { most: 3 }, finger);
  await shot(page, 'job-sign');
});

test('the finger counts what is not wholly on screen as a scroll', async ({ bench }) => {
  const { page, finger } = await atHome(bench, USUAL, '12:00');
  await page.locator('.bottom-bar a[href="#/settings"], .top-bar a').first().tap();
  const last = page.locator('main').getByRole('link').last();
  await finger.tap(last);
  assert.equal(finger.counted.scrolls, 1);
});
