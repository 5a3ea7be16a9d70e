// A backup of a made-up chick, written in the saved form (src/store/saved.rs; fields as in tests/fixtures/saved-v1.json).
import { go } from './owner.mjs';

// 96 bits as 16 characters of base64url without padding (RFC 4648, section 5).
export const idText = (number) => {
  const bytes = Buffer.alloc(12);
  bytes.writeUInt32BE(number, 8);
  return bytes.toString('base64url');
};

const PLAN = {
  species: 'green-winged-macaw',
  name: 'Cinder',
  ring: '',
  // 19 weeks before the first days of the walks.
  hatched: '2026-06-21',
  reference: { g10: 10400, day: '2026-11-01' },
  scale_step_g10: 10,
  feeds: [
    { slot: 'morning', time: '07:00', ml10: 600 },
    { slot: 'midday', time: '14:00', ml10: 400 },
    { slot: 'bedtime', time: '21:00', ml10: 600 },
  ],
  powder_pct10: 250,
  fat_g10_per_100_ml: 0,
  serve_from_c10: 390,
  serve_to_c10: 405,
  tool: 'syringe',
  syringe_ml10: 300,
  loss_limit_pct10: 100,
  drop_order: ['midday', 'morning', 'bedtime'],
  settle_in_days: 7,
  waiting_days: 5,
  room_from_c10: 240,
  room_to_c10: 270,
  contacts: [
    { role: 'breeder', name: 'Example breeder', number: '+1 555 0100' },
    { role: 'avian-vet', name: 'Made-up vet', number: '+1 555 0101' },
    { role: 'emergency-vet', name: 'Made-up night vet', number: '+1 555 0102' },
  ],
  solids: '',
  note: '',
  unconfirmed: [],
};

// A script of what was noted about one made-up chick. Times are London's in winter, that is UTC.
export class Script {
  constructor(number = 1) {
    this.chick = idText(0xc0000000 + number);
    this.last = number * 10_000;
    this.entries = [];
  }

  // Notes something at a time like '2026-11-02T06:45'.
  note(at, did, fields = {}) {
    this.last += 1;
    const seconds = Date.parse(`${at}:00Z`) / 1_000;
    this.entries.push({ v: 1, id: idText(this.last), chick: this.chick, at: seconds, tz: 0, did, ...fields });
    return this;
  }

  added(at, changes = {}) {
    return this.note(at, 'chick-added', { plan: { ...PLAN, ...changes } });
  }

  weighed(at, grams) {
    return this.note(at, 'weighed', { g10: grams * 10, crop: 'empty' });
  }

  fed(at, slot, ml, offeredMl = ml) {
    const offered = offeredMl === ml ? {} : { of_ml10: offeredMl * 10 };
    return this.note(at, 'fed', { slot, ml10: ml * 10, ...offered, response: 'not-noted' });
  }

  refused(at, slot) {
    return this.note(at, 'feed-refused', { slot });
  }

  droppings(at, look = 'normal') {
    return this.note(at, 'droppings-seen', { look });
  }

  solids(at, eaten) {
    return this.note(at, 'solids-seen', { what: 'pellets', eaten });
  }

  // The backup of what was noted since the last one.
  backup() {
    const entries = this.entries.splice(0);
    return JSON.stringify({ v: 1, entries });
  }
}

// Moves the clock, where it stands still, and takes up the phone, so that the app looks at it at once.
export const clockAt = async (page, iso) => {
  await page.clock.setFixedTime(new Date(iso));
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
};

// Takes in what the script noted since the last time, through the screen.
export const takeIn = async (page, script) => {
  await go(page, '#/take-in');
  await page.locator('#paste').fill(script.backup());
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: 'Import' }).click();
  await page.locator('.lamp-band').waitFor();
};

// The lamp's level on the Now screen, and what stands beside it for a failed assertion.
export const lamp = async (page) => {
  await go(page, '#/now');
  const band = page.locator('.lamp-band');
  await band.waitFor();
  return { level: await band.getAttribute('data-level'), words: await band.innerText() };
};

// What the Weaning screen answers, with plain spaces.
export const weaningAnswer = async (page) => {
  await go(page, '#/weaning');
  const answer = page.locator('.weaning__answer');
  await answer.waitFor();
  return (await answer.innerText()).replaceAll('\u00a0', ' ');
};

// Record lines as a later build might write them: whole, but of version 2.
export const newerLine = (page, number) =>
  page.evaluate(
    ([id, chick]) => {
      const crc32 = (text) => {
        let sum = ~0;
        for (const byte of new TextEncoder().encode(text)) {
          sum ^= byte;
          for (let bit = 0; bit < 8; bit += 1) {
            sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
          }
        }
        return (~sum >>> 0).toString(16).padStart(8, '0');
      };
      const payload = JSON.stringify({ v: 2, id, chick, at: 1_793_577_600, did: 'something-new' });
      return { name: `${id}.${crc32(payload)}`, line: `${crc32(payload)}|${payload.length}|${payload}` };
    },
    [idText(number), idText(1)],
  );
