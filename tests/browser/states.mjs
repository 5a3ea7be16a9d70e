// Every screen, and every state of one that shows something of its own, reached without a word of any
// language, so that the same walk can be made in each. All chicks here are made up.
import { clock, until } from './harness.mjs';
import { go, openApp } from './owner.mjs';
import { Script } from './script.mjs';

// The names of src/ui/route.rs; access.test.mjs reads them there too.
export const SCREENS = ['now', 'weight', 'weaning', 'journal', 'handover', 'vet', 'weigh', 'log', 'guide', 'home', 'first-weeks', 'crop', 'droppings', 'solids', 'wrong', 'settings', 'plan', 'start', 'type-in', 'whole-plan', 'take-in', 'chicks', 'chick', 'new-card', 'my-details', 'reports', 'sources'];

// A chick that came home on Sunday 1 November, fed and weighed, and lighter every morning.
// 1040 g at handover; 930 g is 10.6 % below it, over the plan's limit of 10 %.
export const NOW = '2026-11-08T20:50:00Z';
export const losing = () => {
  const script = new Script();
  script.added('2026-11-01T12:00');
  const mornings = [1038, 1030, 1018, 1000, 985, 960, 930];
  mornings.forEach((grams, index) => {
    const day = `2026-11-0${index + 2}`;
    script.weighed(`${day}T06:45`, grams).fed(`${day}T07:00`, 'morning', 60);
    script.fed(`${day}T14:05`, 'midday', index === 2 ? 20 : 40, 40).solids(`${day}T15:00`, 'little').droppings(`${day}T15:10`);
    if (index === 3) {
      script.refused(`${day}T21:00`, 'bedtime');
    } else if (index !== 6) {
      script.fed(`${day}T21:00`, 'bedtime', 60);
    }
  });
  return script;
};

// Takes in a text through the screen.
export const takeInText = async (page, text) => {
  await go(page, '#/take-in');
  await page.locator('#paste').fill(text);
  await page.locator('form button[type="submit"]').click();
  await page.locator('section.question .button--main').click();
  await page.locator('.lamp-band').waitFor();
};

const submit = (page) => page.locator('main button[type="submit"]').last().click();
const open = (page, place) => page.locator(place).first().click();
const seen = (page, place) => page.locator(place).first().waitFor();
const fault = (page) =>
  until('a fault is on screen', async () => (await page.locator('.fault').allInnerTexts()).some((text) => text.trim() !== ''));
const onwards = async (page, step) => {
  await page.locator('.guide__next').click();
  await page.locator('.guide__head .hint', { hasText: `${step}/8` }).waitFor();
};

// In this order: some go on from the one before. Each with its address, null to stay on the screen.
const SHOWN = [
  ...SCREENS.map((name) => ({ name, address: `#/${name}` })),
  { name: 'log-of-one-feed', address: '#/log/bedtime' },
  { name: 'first-weeks-card', address: '#/first-weeks/keel', reach: (page) => open(page, 'details.group > summary') },
  {
    name: 'first-weeks-found',
    address: '#/first-weeks',
    reach: async (page) => {
      await page.locator('#card-search').fill('zzz');
      await page.locator('main [role="status"]', { hasText: /./ }).waitFor();
    },
  },
  {
    name: 'now-opened',
    address: '#/now',
    reach: async (page) => {
      for (const details of await page.locator('main details').all()) {
        await details.evaluate((element) => {
          element.open = true;
        });
      }
    },
  },
  { name: 'handover-card', address: '#/handover', reach: (page) => open(page, 'details.group > summary') },
  {
    name: 'backup-checked',
    address: '#/handover',
    reach: async (page) => {
      const file = { name: 'old.json', mimeType: 'application/json', buffer: Buffer.from(new Script(2).added('2026-11-01T12:00').backup()) };
      await page.locator('#backup-check').setInputFiles(file);
      await page.locator('.backup__answer', { hasText: /\d/ }).waitFor();
    },
  },
  {
    name: 'weight-picture',
    address: '#/weight',
    reach: async (page) => {
      await open(page, '[data-send="true"]');
      await seen(page, '.picture__image');
    },
  },
  {
    name: 'take-in-preview',
    address: '#/take-in',
    reach: async (page) => {
      await page.locator('#paste').fill(new Script(3).added('2026-11-01T12:00').backup());
      await submit(page);
      await seen(page, 'section.question');
    },
  },
  {
    name: 'take-in-refused',
    address: '#/take-in',
    reach: async (page) => {
      await page.locator('#paste').fill('{}');
      await submit(page);
      await fault(page);
    },
  },
  {
    name: 'sign-answered',
    address: '#/wrong',
    reach: async (page) => {
      await open(page, '.most-seen li:nth-child(5) .sign');
      await seen(page, '.answer');
      await open(page, '.what-to-say > summary');
    },
  },
  {
    name: 'weight-asked-about',
    address: '#/weigh',
    reach: async (page) => {
      await page.locator('#weight').fill('9300');
      await page.locator('input[name="crop"]').first().check();
      await submit(page);
      await seen(page, '.question');
    },
  },
  {
    name: 'weight-opened',
    address: '#/weight',
    reach: async (page) => {
      await page.locator('.chart__picture').first().press('ArrowLeft');
      await open(page, '.unfold > summary');
      await open(page, '.unfold .acts .button');
      await page.locator('.fold > summary').last().click();
      await seen(page, '.fold .plain-list');
    },
  },
  {
    name: 'journal-opened',
    address: '#/journal',
    reach: async (page) => {
      await page.locator('.unfold').first().evaluate((details) => {
        details.open = true;
      });
      await seen(page, '.unfold .facts');
    },
  },
  {
    name: 'weaning-opened',
    address: '#/weaning',
    reach: (page) => open(page, '.step__card .fold > summary'),
  },
  { name: 'weight-refused', address: '#/weigh', reach: async (page) => { await submit(page); await fault(page); } },
  {
    name: 'log-opened-and-refused',
    address: '#/log',
    reach: async (page) => {
      for (const summary of await page.locator('details.when > summary').all()) {
        await summary.click();
      }
      await page.locator('#taken').fill('');
      await page.locator('#served-at').fill('x');
      await submit(page);
      await fault(page);
    },
  },
  { name: 'crop-refused', address: '#/crop', reach: async (page) => { await submit(page); await fault(page); } },
  { name: 'plan-refused', address: '#/whole-plan', reach: async (page) => { await submit(page); await fault(page); } },
  { name: 'group-who', address: '#/type-in', reach: async (page) => { await submit(page); await fault(page); } },
  {
    name: 'group-hatched',
    address: null,
    reach: async (page) => {
      await page.locator('#name').fill('Ember');
      await page.locator('#species').selectOption({ index: 1 });
      await submit(page);
      await seen(page, '#hatched');
    },
  },
  {
    name: 'group-fed',
    address: null,
    reach: async (page) => {
      await open(page, '.groups__dock .button');
      await seen(page, '.feed-line');
      await submit(page);
      await fault(page);
    },
  },
  { name: 'group-weight', address: null, reach: async (page) => { await open(page, '.groups__dock .button'); await seen(page, '#handover-weight'); } },
  { name: 'group-call', address: null, reach: async (page) => { await open(page, '.groups__dock .button'); await seen(page, '#vet-number'); } },
  {
    name: 'journal-writing',
    address: '#/journal',
    reach: async (page) => {
      await open(page, 'details.group > summary');
      await page.locator('details.group button[type="submit"]').click();
      await fault(page);
      await page.locator('#search').fill('zzz');
      await page.locator('.journal-day').first().waitFor({ state: 'detached' });
    },
  },
];

const GUIDE = [
  { name: 'guide-crop', address: '#/guide' },
  {
    name: 'guide-crop-hard',
    address: null,
    reach: async (page) => {
      await open(page, '.row-button');
      await seen(page, '.answer');
      await open(page, '.row-button');
    },
  },
  {
    name: 'guide-stop',
    address: null,
    reach: async (page) => {
      await open(page, '.guide__stop');
      await seen(page, 'section.group .wrong-link');
    },
  },
  {
    name: 'guide-mix',
    address: null,
    reach: async (page) => {
      await open(page, '[data-go-on]');
      await open(page, '.crop-card');
      await page.locator('.guide__head .hint', { hasText: '2/8' }).waitFor();
    },
  },
  { name: 'guide-warmth', address: null, reach: (page) => onwards(page, 3) },
  {
    name: 'guide-too-hot',
    address: null,
    reach: async (page) => {
      await page.locator('#cup').fill('48');
      await submit(page);
      await seen(page, '.cup[data-heat="burns"]');
    },
  },
  {
    name: 'guide-warm',
    address: null,
    reach: async (page) => {
      await page.clock.fastForward('00:10:00');
      await page.locator('#cup').fill('40');
      await submit(page);
      await seen(page, '.cup[data-heat="good"]');
    },
  },
  { name: 'guide-draw', address: null, reach: (page) => onwards(page, 4) },
  { name: 'guide-hold', address: null, reach: (page) => onwards(page, 5) },
  { name: 'guide-response', address: null, reach: (page) => onwards(page, 6) },
  { name: 'guide-give', address: null, reach: (page) => onwards(page, 7) },
  { name: 'now-feed-under-way', address: '#/now', reach: (page) => seen(page, '.question') },
  {
    name: 'guide-after',
    address: '#/guide',
    reach: async (page) => {
      await page.locator('.guide__next').click();
      await page.locator('.guide .acts .button').last().click();
      await page.locator('.guide__head .hint', { hasText: '8/8' }).waitFor();
    },
  },
];

// Last, since what is noted here stands for the rest of the walk.
const ALARM = [
  {
    name: 'guide-stopped-by-a-sign',
    address: '#/guide',
    reach: async (page) => {
      // The feed under way is logged first: the next one has not begun.
      await page.locator('.guide__next').click();
      await seen(page, '.next-feed');
      await go(page, '#/wrong');
      await open(page, '.most-seen li:nth-child(5) .sign');
      await open(page, '.answer + .acts .button');
      await go(page, '#/guide');
      await seen(page, '.question .guard');
    },
  },
  { name: 'alarm', address: '#/now', reach: (page) => seen(page, '.lamp-band[data-level="emergency"]') },
  {
    name: 'weight-kept',
    address: '#/weigh',
    reach: async (page) => {
      await page.locator('#weight').fill('928');
      await page.locator('input[name="crop"]').first().check();
      await submit(page);
      await seen(page, '.weigh__kept');
    },
  },
];

export const STATES = [...SHOWN, ...GUIDE, ...ALARM];

// A phone with that chick, ten minutes before its bedtime feed.
export const withLosingChick = async (bench, options) => {
  const site = await bench.site();
  const { page } = await bench.phone(site, options);
  await clock(page, NOW);
  await openApp(page, site);
  await takeInText(page, losing().backup());
  return page;
};

// Walks through states, one after the other, and looks at each.
export const walk = async (page, states, look) => {
  for (const state of states) {
    if (state.address !== null) {
      // Anew, also where the address is the one of before.
      await go(page, '#/droppings');
      await go(page, state.address);
    }
    await state.reach?.(page);
    await look(state.name);
  }
};
