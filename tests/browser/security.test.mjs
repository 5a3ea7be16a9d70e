// What the bench watches on every page of every test: nothing leaves for another host, and the content
// policy has stopped nothing. Here it is made to see both, since a guard that sees nothing proves nothing.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { offlineReady, started, until } from './harness.mjs';

const open = async (bench) => {
  const site = await bench.site();
  const other = await bench.site();
  const { context, page } = await bench.phone(site);
  await page.goto(site.url);
  await started(page);
  await offlineReady(page);
  return { context, page, other };
};

test('the bench sees what the content policy stops: a script, a style, a picture, a frame, a form, a socket', async ({ bench }) => {
  const { page, other } = await open(bench);
  bench.allow(/^content policy: /, /Content Security Policy/, /request to another origin/);
  // Each directive with what a text that got into the page could try (W3C Content Security Policy 3, 6).
  const tried = ['script-src-elem', 'script-src-attr', 'style-src-elem', 'style-src-attr', 'img-src', 'frame-src', 'connect-src', 'media-src', 'object-src', 'form-action', 'base-uri'];
  await page.evaluate((address) => {
    const add = (html) => {
      const range = document.createRange();
      document.body.append(range.createContextualFragment(html));
    };
    add('<script>window.hasRun = true</script>');
    add('<button type="button" onclick="window.hasRun = true" id="tried">x</button>');
    document.getElementById('tried').click();
    add('<style>p { color: red }</style><p style="color: red">x</p>');
    add(`<img src="${address}icons/lamp.svg" alt=""><iframe src="${address}"></iframe><audio src="${address}x.wav"></audio>`);
    add(`<object data="${address}"></object><base href="${address}">`);
    add(`<form action="${address}" method="get"><button id="sent">x</button></form>`);
    document.getElementById('sent').click();
    new WebSocket(address.replace('http', 'ws'));
  }, other.url);
  const seen = (directive) => bench.problems.some((problem) => problem.startsWith(`content policy: ${directive} stopped`));
  for (const directive of tried) {
    await until(`a report of ${directive}`, () => seen(directive));
  }
  assert.equal(await page.evaluate(() => window.hasRun), undefined);
});

test('the bench sees a request of the page and of the offline worker to another host', async ({ bench }) => {
  const { context, page, other } = await open(bench);
  bench.allow(/^content policy: /, /Content Security Policy/, /request to another origin/);
  const [worker] = context.serviceWorkers();
  const sees = (address) => until(address, () => bench.problems.includes(`request to another origin: ${address}`));
  await worker.evaluate((address) => fetch(address, { mode: 'no-cors' }).then(() => {}), `${other.url}from-worker.txt`);
  await sees(`${other.url}from-worker.txt`);
  await page.evaluate((address) => {
    location.href = address;
  }, `${other.url}index.html`);
  await sees(`${other.url}index.html`);
});
