// Photos: made small, kept under their hash, shown where they belong, carried by backups and never by links.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from './fixtures.mjs';
import { clock, shot, started, until } from './harness.mjs';
import { copied, eveningPhone, go, journalWords, kept, note, openApp, press, typeInChick } from './owner.mjs';
import { Script } from './script.mjs';

// A picture of a given size full of noise, which no coder makes small, as a file's bytes.
const picture = async (page, width, height, type = 'image/jpeg') => {
  const text = await page.evaluate(
    async ([width, height, type]) => {
      const canvas = new OffscreenCanvas(width, height);
      const pen = canvas.getContext('2d');
      const image = pen.createImageData(width, height);
      // As many random bytes as the browser gives at once.
      for (let place = 0; place < image.data.length; place += 65_536) {
        crypto.getRandomValues(image.data.subarray(place, place + 65_536));
      }
      for (let place = 3; place < image.data.length; place += 4) {
        image.data[place] = 255;
      }
      pen.putImageData(image, 0, 0);
      const blob = await canvas.convertToBlob({ type, quality: 0.9 });
      const reader = new FileReader();
      reader.readAsDataURL(blob);
      await new Promise((done) => {
        reader.onload = done;
      });
      return reader.result.split(',')[1];
    },
    [width, height, type],
  );
  return Buffer.from(text, 'base64');
};

// The same with the camera's own notes: an APP1 segment of Exif (CIPA DC-008, 4.5.4) with a place in it.
const PLACE = 'GPS 51.5007N 0.1246W';
const withPlace = (jpeg) => {
  const body = Buffer.concat([Buffer.from('Exif\0\0MM\0*\0\0\0\x08', 'latin1'), Buffer.from(PLACE)]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
};

// Everything in the pictures' own database: the hash and the bytes.
const stored = (page) =>
  page.evaluate(async () => {
    const database = await new Promise((done, fail) => {
      const request = indexedDB.open('perchlight-photos', 1);
      request.onupgradeneeded = () => request.result.createObjectStore('photos');
      request.onsuccess = () => done(request.result);
      request.onerror = fail;
    });
    const all = (ask) => new Promise((done) => {
      const request = ask(database.transaction('photos').objectStore('photos'));
      request.onsuccess = () => done(request.result);
    });
    const keys = await all((store) => store.getAllKeys());
    const values = await all((store) => store.getAll());
    database.close();
    return keys.map((key, place) => ({ key, bytes: values[place].toString() }));
  });

// Width and height by the frame header of a JPEG (ISO/IEC 10918-1, B.2.2).
const sides = (jpeg) => {
  for (let place = 2; place < jpeg.length; place += 2 + jpeg.readUInt16BE(place + 2)) {
    const marker = jpeg[place + 1];
    if (marker >= 0xc0 && marker <= 0xc2) {
      return [jpeg.readUInt16BE(place + 7), jpeg.readUInt16BE(place + 5)];
    }
  }
  throw new Error('no frame header');
};

const choose = async (page, files) => {
  const list = Array.isArray(files) ? files : [files];
  await page.locator('#photo-choose').setInputFiles(list);
};
const jpegFile = (buffer, name = 'photo.jpg') => ({ name, mimeType: 'image/jpeg', buffer });
const said = async (page, words) => {
  const answer = page.locator('.photo__answer', { hasText: words });
  await answer.waitFor();
  return answer.innerText();
};

const withChick = async (bench) => {
  const site = await bench.site();
  const page = await eveningPhone(bench, site);
  await openApp(page, site);
  await typeInChick(page);
  await go(page, '#/vet');
  return { site, page };
};

test('a photo is made small, loses the place where it was taken, and is kept under its hash', async ({ bench }) => {
  const { page } = await withChick(bench);
  const original = withPlace(await picture(page, 2100, 1400));
  assert.ok(original.length > 1_000_000 && original.includes(PLACE), `${original.length} bytes`);
  await choose(page, jpegFile(original));
  await said(page, 'Photos kept: 1 of 1.');
  await page.locator('.photo-list img').waitFor();
  const [{ key, bytes }, ...more] = await stored(page);
  assert.equal(more.length, 0);
  const kept = Buffer.from(bytes.split(',').map(Number));
  assert.ok(kept.length <= 200_000, `${kept.length} bytes`);
  const [width, height] = sides(kept);
  assert.ok(Math.max(width, height) <= 1280 && Math.abs(width / height - 1.5) < 0.01, `${width} x ${height}`);
  assert.ok(!kept.includes(PLACE) && !kept.includes('Exif'), 'the place is still in it');
  assert.equal(createHash('sha256').update(kept).digest('hex'), key);
  await shot(page, 'photos-dark');
  await page.reload();
  await started(page);
  assert.ok((await journalWords(page)).some((line) => line.includes('Photo of the droppings')));
  await page.locator('summary', { hasText: 'Photo of the droppings' }).click();
  await page.locator('.journal-line img').waitFor();
  await shot(page, 'photo-in-journal-dark');
});

test('what is no picture is refused with a sentence, and nothing is noted', async ({ bench }) => {
  const { page } = await withChick(bench);
  await choose(page, jpegFile(Buffer.from('no picture at all')));
  await said(page, 'this file is no picture that this browser can read');
  await choose(page, jpegFile((await picture(page, 64, 64)).subarray(0, 20)));
  await said(page, 'this file is no picture that this browser can read');
  assert.deepEqual(await stored(page), []);
  assert.ok(!(await journalWords(page)).some((line) => line.includes('Photo')));
});

test('with the storage full a photo is not kept, that is said, and notes are kept as before', async ({ bench }) => {
  const { page } = await withChick(bench);
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given) {
      if (this.name === 'photos') {
        throw new DOMException('full', 'QuotaExceededError');
      }
      return put.apply(this, given);
    };
  });
  await choose(page, jpegFile(await picture(page, 200, 200)));
  await said(page, 'Photo NOT kept: this phone’s storage is full'.replace('’', "'"));
  assert.ok(!(await journalWords(page)).some((line) => line.includes('Photo')));
  await note(page, 'noted all the same');
  await kept(page);
});

test('pages show a photo, a link carries its entry without it, and a backup with photos brings it', async ({ bench }) => {
  const { site, page } = await withChick(bench);
  await choose(page, jpegFile(await picture(page, 640, 480)));
  await said(page, 'Photos kept: 1 of 1.');
  await page.locator('.photo-list img').waitFor();
  await go(page, '#/handover');
  for (const button of ['Report for the breeder', 'Page for the vet']) {
    let html = '';
    await until('its picture is fetched', async () => {
      const downloading = page.waitForEvent('download');
      await page.getByRole('button', { name: button }).click();
      html = readFileSync(await (await downloading).path(), 'utf8');
      return html.includes('<img');
    });
    assert.match(html, /<img alt="Photo of the droppings[^"]*" src="data:image\/jpeg;base64,\/9j\//, button);
    assert.equal(html.match(/<img/g).length, 1);
  }
  const link = await copied(page, 'Copy report as link');
  assert.ok(link.length < 2_000, `${link.length} characters`);
  await page.getByRole('button', { name: 'Prepare a backup with photos' }).click();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the backup with photos' }).click();
  const saved = await (await downloading).path();
  const lines = readFileSync(saved, 'utf8').trimEnd().split('\n');
  assert.equal(lines.length, 3);
  const [hash, data] = lines[2].split(' ');
  assert.equal(createHash('sha256').update(Buffer.from(data, 'base64')).digest('hex'), hash);
  // Another phone takes the link, and says where the picture is; then the backup, with a damaged picture after it.
  const other = await eveningPhone(bench, site);
  await openApp(other, site, link.slice(link.indexOf('#')));
  await other.getByRole('button', { name: 'Import' }).click();
  await other.locator('.lamp-band').waitFor();
  await go(other, '#/vet');
  await other.locator('.photo-list', { hasText: 'The picture is not on this phone' }).waitFor();
  const folder = bench.folder();
  const file = join(folder, 'backup-with-photos.txt');
  writeFileSync(file, `${lines.join('\n')}\n${'ab'.repeat(32)} ${data}\n`);
  await go(other, '#/take-in');
  await other.locator('#file').setInputFiles(file);
  await other.getByRole('button', { name: 'Import' }).click();
  await other.getByText('Photos imported: 1. 1 were damaged').waitFor();
  await go(other, '#/vet');
  await other.locator('.photo-list img').waitFor();
});

test('a chick that is erased takes its pictures along', async ({ bench }) => {
  const { page } = await withChick(bench);
  await choose(page, jpegFile(await picture(page, 64, 64)));
  await said(page, 'Photos kept: 1 of 1.');
  assert.equal((await stored(page)).length, 1);
  await go(page, '#/settings');
  await page.locator('summary', { hasText: 'Remove Ember from this phone' }).click();
  await press(page, 'Yes, remove it from this phone');
  await page.locator('summary', { hasText: 'Erase the whole record of Ember' }).click();
  await page.locator('#erase-name').fill('Ember');
  await press(page, 'Erase it for good');
  await until('its picture is gone', async () => (await stored(page)).length === 0);
});

// Entries of so many photos, taken in through the screen; the hashes of their pictures.
const noted = async (page, count) => {
  const script = new Script();
  script.added('2026-11-01T12:00').note('2026-11-01T13:00', 'arrived');
  for (let place = 0; place < count; place += 1) {
    const sha256 = createHash('sha256').update(String(place)).digest('hex');
    const minute = String(place % 60).padStart(2, '0');
    const hour = String(6 + Math.floor(place / 60)).padStart(2, '0');
    script.note(`2026-11-24T${hour}:${minute}`, 'photo-taken', { of: 'droppings', sha256, bytes: 120_000 });
  }
  const text = script.backup();
  await go(page, '#/take-in');
  await page.locator('#paste').fill(text);
  await page.locator('form button[type="submit"]').click();
  await page.locator('section.question .button--main').click();
  await page.locator('.lamp-band').waitFor();
  await kept(page);
  return [...text.matchAll(/"sha256":"([0-9a-f]+)"/g)].map(([, hash]) => hash);
};

// Puts pictures of 60 kB under these hashes.
const fill = (page, hashes) =>
  page.evaluate(async (hashes) => {
    const database = await new Promise((done) => {
      const request = indexedDB.open('perchlight-photos', 1);
      request.onupgradeneeded = () => request.result.createObjectStore('photos');
      request.onsuccess = () => done(request.result);
    });
    const writing = database.transaction('photos', 'readwrite');
    for (const hash of hashes) {
      writing.objectStore('photos').put(crypto.getRandomValues(new Uint8Array(60_000)), hash);
    }
    await new Promise((done) => {
      writing.oncomplete = done;
    });
    database.close();
  }, hashes);

// The middle of five starts, milliseconds.
const startMs = async (page) => {
  const times = [];
  for (let turn = 0; turn < 5; turn += 1) {
    await page.reload();
    await started(page);
    times.push(await page.evaluate(() => performance.now()));
  }
  return Math.round(times.sort((one, other) => one - other)[2]);
};

test('three hundred photos cost a start nothing: their database is not opened, and their space is told', async ({ bench }) => {
  test.setTimeout(240_000);
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    window.opened = [];
    IDBFactory.prototype.open = function (name, ...rest) {
      window.opened.push(name);
      return open.call(this, name, ...rest);
    };
  });
  await openApp(page, site);
  const hashes = await noted(page, 300);
  // In turn, so that a machine that gets busier says nothing about either.
  const measured = { without: [], with: [] };
  for (let turn = 0; turn < 2; turn += 1) {
    await page.evaluate(() => new Promise((done) => {
      indexedDB.deleteDatabase('perchlight-photos').onsuccess = done;
    }));
    measured.without.push(await startMs(page));
    await fill(page, hashes);
    measured.with.push(await startMs(page));
    assert.deepEqual(await page.evaluate(() => [...new Set(window.opened)]), ['perchlight']);
  }
  await go(page, '#/vet');
  // 300 x 120 kB = 36 MB
  await page.getByText('300 photos, 36 MB').waitFor();
  assert.equal(await page.locator('.photo-list li').count(), 12);
  console.log(`start: with 300 pictures ${measured.with.join(', ')} ms; without ${measured.without.join(', ')} ms`);
});
