// On a real host: nginx with the file that README names, its headers, an update, and the way back.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, readFileSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { packFiles, writeWorker } from '../../.build/precache.mjs';
import { test } from './fixtures.mjs';
import { DIST, offlineReady, started, until } from './harness.mjs';
import { go, journalWords, kept, note, openApp, storageNotice, typeInChick } from './owner.mjs';
import { newerLine } from './script.mjs';

const NGINX = fileURLToPath(new URL('../../.tools/nginx/', import.meta.url));
const CONFIG = fileURLToPath(new URL('../../.build/nginx.conf', import.meta.url));

const freePort = async () => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address();
  server.close();
  await once(server, 'close');
  return port;
};

// nginx with a build below a sub-path, started by nobody else. HTTPS alone is missing, as a loopback address needs none.
const host = async (bench) => {
  test.skip(!existsSync(join(NGINX, 'usr/sbin/nginx')), 'nginx is not here');
  const folder = bench.folder();
  const port = await freePort();
  const lines = { 'listen 443 ssl;': `listen 127.0.0.1:${port};`, '/var/www/perchlight': folder };
  const site = Object.entries(lines).reduce((text, [from, to]) => {
    assert.ok(text.includes(from), from);
    return text.replace(from, to);
  }, readFileSync(CONFIG, 'utf8'));
  const own = bench.folder();
  writeFileSync(join(own, 'site.conf'), site);
  const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((name) => `${name}_temp_path ${own}/${name};`);
  writeFileSync(
    join(own, 'nginx.conf'),
    `load_module ${NGINX}usr/lib/nginx/modules/ngx_http_brotli_static_module.so;
    daemon off; master_process off; pid ${own}/pid; error_log stderr;
    events {}
    http { include ${NGINX}etc/nginx/mime.types; access_log ${own}/access.log; ${temporary.join(' ')} include ${own}/site.conf; }`,
  );
  const child = spawn(join(NGINX, 'usr/sbin/nginx'), ['-e', 'stderr', '-p', own, '-c', join(own, 'nginx.conf')]);
  const ended = new Promise((done) => {
    child.once('exit', done);
    child.once('error', done);
  });
  let said = '';
  child.stderr.on('data', (text) => {
    said += text;
  });
  const stop = async () => {
    child.kill('SIGKILL');
    await ended;
  };
  bench.closers.push(stop);
  const origin = `http://127.0.0.1:${port}`;
  await until('nginx answers', async () => {
    assert.equal(child.exitCode, null, said);
    return fetch(origin).then(() => true, () => false);
  });
  return { origin, url: `${origin}/some/folder/`, folder: join(folder, 'some/folder'), log: join(own, 'access.log'), stop };
};

// Another build in the place of the present one, both whole at every moment.
const change = (site, folder) => {
  if (existsSync(site.folder)) {
    renameSync(site.folder, `${site.folder}-${Date.now()}`);
  }
  cpSync(folder, site.folder, { recursive: true });
};

test('nginx sends every file with its type, packed when that is asked for, and with the headers that matter', async ({ bench }) => {
  const site = await host(bench);
  change(site, DIST);
  const page = readFileSync(join(DIST, 'index.html'), 'utf8');
  const [, policy] = page.match(/http-equiv="?Content-Security-Policy"? content="([^"]*)"/);
  const types = { css: 'text/css', html: 'text/html', js: 'application/javascript', wasm: 'application/wasm', webmanifest: 'application/manifest+json', svg: 'image/svg+xml', png: 'image/png' };
  const names = readdirSync(DIST, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(DIST.length));
  const plain = names.filter((name) => !/\.(br|gz)$/.test(name));
  assert.ok(plain.length > 10);
  for (const name of plain) {
    const answer = await fetch(site.url + name, { headers: { 'accept-encoding': 'identity' } });
    const ending = name.split('.').at(-1);
    assert.equal(answer.status, 200, name);
    assert.equal(answer.headers.get('content-type').split(';')[0], types[ending], name);
    assert.equal(answer.headers.get('content-security-policy'), `${policy}; frame-ancestors 'none'`);
    assert.equal(answer.headers.get('x-content-type-options'), 'nosniff');
    assert.equal(answer.headers.get('referrer-policy'), 'no-referrer');
    const isFixed = /^perchlight-[0-9a-f]{16}/.test(name);
    assert.equal(answer.headers.get('cache-control'), isFixed ? 'public, max-age=31536000, immutable' : 'no-cache', name);
    assert.ok(readFileSync(join(DIST, name)).equals(Buffer.from(await answer.arrayBuffer())), name);
    if (ending === 'png') {
      continue;
    }
    for (const [encoding, file, unpack] of [['br', `${name}.br`, brotliDecompressSync], ['gzip', `${name}.gz`, gunzipSync]]) {
      const packed = readFileSync(join(DIST, file));
      assert.ok(unpack(packed).equals(readFileSync(join(DIST, name))), file);
      // By HEAD, since a body would come unpacked.
      const { headers } = await fetch(site.url + name, { method: 'HEAD', headers: { 'accept-encoding': encoding } });
      assert.equal(headers.get('content-encoding'), encoding, name);
      assert.equal(headers.get('content-length'), String(packed.length), name);
      assert.match(headers.get('vary'), /accept-encoding/i);
    }
  }
  const first = await fetch(`${site.url}sw.js`);
  const again = await fetch(`${site.url}sw.js`, { headers: { 'if-none-match': first.headers.get('etag') } });
  assert.equal(again.status, 304);
  assert.equal((await fetch(`${site.url}not-there`)).status, 404);
});

// Where the worker was cleared, nobody but the host is there to take what another app shares (share_target).
test('nginx refuses a shared text without the worker, and its log does not hold it', async ({ bench }) => {
  const site = await host(bench);
  change(site, DIST);
  const { action, method, params } = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8')).share_target;
  const sent = new FormData();
  sent.set(params.text, 'a weight of Ember: 1012 g');
  const answer = await fetch(new URL(action, site.url), { method, body: sent });
  // RFC 9110, 15.5.6: Method Not Allowed
  assert.equal(answer.status, 405);
  const log = readFileSync(site.log, 'utf8');
  assert.match(log, /"POST \/some\/folder\/ HTTP\/1\.1" 405/);
  assert.doesNotMatch(log, /Ember|1012/);
});

test('an update and the way back on nginx lose no record, and one of a newer version is left alone', async ({ bench }) => {
  test.setTimeout(240_000);
  const site = await host(bench);
  change(site, DIST);
  const { page } = await bench.phone(site);
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  await offlineReady(page);

  // The same app, told apart by a mark on its page.
  const next = bench.copyOfBuild();
  const html = join(next, 'index.html');
  writeFileSync(html, readFileSync(html, 'utf8').replace('<html ', '<html data-build="2" '));
  writeWorker(next);
  packFiles(next);
  const changeTo = async (folder, mark) => {
    change(site, folder);
    await page.evaluate(() => navigator.serviceWorker.ready.then((registration) => registration.update()).then(() => {}));
    await go(page, '#/now');
    const notice = page.locator('.banner[data-kind="update"]');
    await notice.getByRole('button', { name: 'Reload now' }).click();
    const isThere = () => page.evaluate(() => document.documentElement.dataset.build ?? '1');
    await until(`build ${mark}`, async () => (await isThere().catch(() => '')) === mark, 30_000);
    await started(page);
  };
  await changeTo(next, '2');
  await note(page, 'noted in the newer build');
  const { name, line } = await newerLine(page, 7);
  const key = `perchlight/v1/entry/${name}`;
  await page.evaluate(([key, line]) => localStorage.setItem(key, line), [key, line]);

  await changeTo(DIST, '1');
  await storageNotice(page, /from a newer version of Perchlight.*They are safe.*until then nothing new is saved/);
  assert.deepEqual(await journalWords(page), ['noted in the newer build', 'Chick added: Ember']);
  assert.equal(await page.evaluate((key) => localStorage.getItem(key), key), line, 'left alone');

  // Forward again, and without the host.
  await changeTo(next, '2');
  await site.stop();
  await page.reload();
  await started(page);
  assert.deepEqual(await journalWords(page), ['noted in the newer build', 'Chick added: Ember']);
  assert.equal(await page.evaluate((key) => localStorage.getItem(key), key), line);
});
