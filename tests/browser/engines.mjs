// One phone in three engines: Chromium by Playwright, Firefox by WebDriver BiDi, WebKitGTK by W3C WebDriver.
// The clock and the storage are the real ones. Every phone has a fresh profile; each can be killed with SIGKILL.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import { writeWorker } from '../../.build/precache.mjs';
import { test } from './fixtures.mjs';
import { until } from './harness.mjs';
import { CHICK } from './owner.mjs';
import { Script } from './script.mjs';

// For one answer of a slow machine.
const LONGEST_MS = 60_000;
// What a page needs beyond that is waited for by what it shows.
const LOADED = { waitUntil: 'commit', timeout: LONGEST_MS };
// Where a page that nobody automates asks what to do.
const ORDERS = '/orders/';
const SIZE = { width: 360, height: 800 };

// Where it is past noon now, an hour or two before a feed: whoever runs this at night gets the screens of the day.
// POSIX turns the sign round: Etc/GMT-5 is five hours east of Greenwich.
const hoursEast = 12 - new Date().getUTCHours();
const ZONE = `Etc/GMT${hoursEast > 0 ? '-' : '+'}${Math.abs(hoursEast)}`;

// The civil date there, some days ago.
export const daysAgo = (days) =>
  new Date(Date.now() + hoursEast * 3_600_000 - days * 86_400_000).toISOString().slice(0, 10);

// A program and everything that it starts, which end together.
class Program {
  constructor(command, args, { env = {}, stdio = 'ignore' } = {}) {
    this.child = spawn(command, args, { detached: true, stdio, env: { ...process.env, TZ: ZONE, ...env } });
    this.ended = new Promise((done) => {
      this.child.once('exit', done);
      this.child.once('error', (error) => {
        this.error = error;
        done();
      });
    });
  }

  // Waits for what it gives when it is ready, as long as it runs.
  async ready(what, ask) {
    let found = null;
    await until(what, async () => {
      if (this.error !== undefined || this.child.exitCode !== null) {
        throw new Error(`${this.child.spawnfile} ended: ${this.error ?? `exit code ${this.child.exitCode}`}`);
      }
      found = await ask();
      return found !== null;
    }, LONGEST_MS);
    return found;
  }

  async kill() {
    if (this.child.pid !== undefined) {
      try {
        process.kill(-this.child.pid, 'SIGKILL');
      } catch (error) {
        if (error.code !== 'ESRCH') {
          throw error;
        }
      }
    }
    await this.ended;
  }
}

const freePort = async () => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address();
  server.close();
  await once(server, 'close');
  return port;
};

// The file that an act saves into a folder; what is half written has another ending or no length.
const savedInto = async (folder, act) => {
  const before = readdirSync(folder);
  await act();
  const isNew = (name) => !before.includes(name) && !/\.(part|wkdownload)$/.test(name) && statSync(join(folder, name)).size > 0;
  await until('the file is saved', () => {
    const names = readdirSync(folder);
    return names.some(isNew) && !names.some((name) => /\.(part|wkdownload)$/.test(name));
  }, LONGEST_MS);
  return join(folder, readdirSync(folder).find(isNew));
};

class Chromium {
  constructor(bench, site) {
    this.killable = bench.killable(site, { TZ: ZONE });
  }

  async open() {
    this.page = await this.killable.open();
  }

  kill = () => this.killable.kill();
  goto = (url) => this.page.goto(url, LOADED);
  reload = () => this.page.reload(LOADED);
  run = (source, given) => this.page.evaluate(`(${source})(${JSON.stringify(given)})`);
  find = async (source, given) => (await this.page.evaluateHandle(`(${source})(${JSON.stringify(given)})`)).asElement();
  click = (element) => element.click();
  keys = (element, text) => element.type(text);
  choose = (element, path) => element.setInputFiles(path);

  async saved(act) {
    const downloading = this.page.waitForEvent('download', { timeout: LONGEST_MS });
    await act();
    return (await downloading).path();
  }
}

// W3C WebDriver BiDi: one web socket, commands and their answers by number.
class Firefox {
  constructor(bench) {
    this.profile = bench.folder();
    this.downloads = bench.folder();
    const prefs = {
      'browser.download.dir': this.downloads,
      'browser.download.folderList': 2,
      // A browser that was killed often would ask whether to start in a safe mode.
      'toolkit.startup.max_resumed_crashes': -1,
      'browser.sessionstore.resume_from_crash': false,
      'browser.shell.checkDefaultBrowser': false,
      'intl.accept_languages': 'en-GB',
      'datareporting.policy.dataSubmissionEnabled': false,
    };
    const lines = Object.entries(prefs).map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`);
    writeFileSync(join(this.profile, 'user.js'), lines.join(''));
  }

  async open() {
    const file = join(this.profile, 'WebDriverBiDiServer.json');
    rmSync(file, { force: true });
    const args = ['--headless', '--no-remote', '--remote-debugging-port=0', '--profile', this.profile, 'about:blank'];
    this.program = new Program(process.env.FIREFOX_PATH || 'firefox-esr', args);
    const port = await this.program.ready('Firefox listens', () => {
      const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
      return text.endsWith('}') ? JSON.parse(text).ws_port : null;
    });
    this.socket = new WebSocket(`ws://127.0.0.1:${port}/session`);
    this.socket.on('error', () => {});
    this.waiting = new Map();
    this.last = 0;
    this.socket.on('message', (data) => {
      const answer = JSON.parse(data);
      this.waiting.get(answer.id)?.(answer);
      this.waiting.delete(answer.id);
    });
    this.socket.on('close', () => this.waiting.forEach((tell) => tell({ error: 'closed', message: 'Firefox is gone' })));
    await once(this.socket, 'open');
    await this.ask('session.new', { capabilities: {} });
    const { contexts } = await this.ask('browsingContext.getTree', {});
    this.context = contexts[0].context;
    await this.ask('browsingContext.setViewport', { context: this.context, viewport: SIZE });
  }

  ask(method, params) {
    this.last += 1;
    const id = this.last;
    return new Promise((done, failed) => {
      this.waiting.set(id, (answer) => {
        if (answer.error === undefined) {
          done(answer.result);
        } else {
          failed(new Error(`${method}: ${answer.error}: ${answer.message}`));
        }
      });
      this.socket.send(JSON.stringify({ id, method, params }));
    });
  }

  async kill() {
    await this.program?.kill();
    this.socket?.terminate();
  }

  goto = (url) => this.ask('browsingContext.navigate', { context: this.context, url, wait: 'complete' });
  reload = () => this.ask('browsingContext.reload', { context: this.context, wait: 'complete' });

  async call(functionDeclaration) {
    const target = { context: this.context };
    const answer = await this.ask('script.callFunction', { functionDeclaration, target, awaitPromise: true });
    if (answer.type === 'exception') {
      throw new Error(answer.exceptionDetails.text);
    }
    return answer.result;
  }

  async run(source, given) {
    const { value } = await this.call(`async () => JSON.stringify(await (${source})(${JSON.stringify(given)}) ?? null)`);
    return JSON.parse(value);
  }

  async find(source, given) {
    const { type, sharedId } = await this.call(`() => (${source})(${JSON.stringify(given)})`);
    return type === 'node' ? { sharedId } : null;
  }

  act = (actions) => this.ask('input.performActions', { context: this.context, actions });

  click = (element) =>
    this.act([
      {
        type: 'pointer',
        id: 'finger',
        parameters: { pointerType: 'mouse' },
        actions: [
          { type: 'pointerMove', x: 0, y: 0, origin: { type: 'element', element } },
          { type: 'pointerDown', button: 0 },
          { type: 'pointerUp', button: 0 },
        ],
      },
    ]);

  async keys(_, text) {
    await this.act([{ type: 'key', id: 'keys', actions: [...text].flatMap((value) => [{ type: 'keyDown', value }, { type: 'keyUp', value }]) }]);
    // It brings the caret into view with its next frame: a script's scroll before that would be undone, and its tap
    // go elsewhere. No thumb is so quick.
    await this.run(() => new Promise((done) => {
      requestAnimationFrame(() => setTimeout(done));
    }));
  }

  choose = (element, path) => this.ask('input.setFiles', { context: this.context, element, files: [path] });
  saved = (act) => savedInto(this.downloads, act);
}

// A home and a screen for MiniBrowser of WebKitGTK.
class OnScreen {
  constructor(bench) {
    this.home = bench.folder();
    this.downloads = join(this.home, 'Downloads');
    mkdirSync(this.downloads);
    mkdirSync(join(this.home, '.config'));
    writeFileSync(join(this.home, '.config/user-dirs.dirs'), 'XDG_DOWNLOAD_DIR="$HOME/Downloads"\n');
  }

  async openScreen() {
    const args = ['-displayfd', '3', '-screen', '0', '800x1000x24', '-nolisten', 'tcp'];
    this.screen = new Program('Xvfb', args, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
    let display = '';
    this.screen.child.stdio[3].on('data', (text) => {
      display += text;
    });
    await this.screen.ready('the screen is there', () => (display.endsWith('\n') ? display : null));
    this.env = {
      DISPLAY: `:${display.trim()}`,
      HOME: this.home,
      XDG_CONFIG_HOME: join(this.home, '.config'),
      XDG_DATA_HOME: join(this.home, '.data'),
      XDG_CACHE_HOME: join(this.home, '.cache'),
      DBUS_SESSION_BUS_ADDRESS: 'disabled:',
      NO_AT_BRIDGE: '1',
      // Its sandbox refuses to start for root.
      ...(process.getuid() === 0 ? { WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' } : {}),
    };
  }
}

// W3C WebDriver over HTTP. Under automation MiniBrowser keeps its storage in memory, so that a kill would end that too.
class WebKit extends OnScreen {
  async open() {
    await this.openScreen();
    const port = await freePort();
    this.driver = new Program('WebKitWebDriver', [`--port=${port}`], { env: this.env });
    this.address = `http://127.0.0.1:${port}`;
    await this.driver.ready('WebKitWebDriver listens', () => this.ask('GET', '/status').then(() => true, () => null));
    const binary = miniBrowser();
    const wanted = { 'webkitgtk:browserOptions': { binary, args: ['--automation'] } };
    const { sessionId } = await this.ask('POST', '/session', { capabilities: { alwaysMatch: wanted } });
    this.address += `/session/${sessionId}`;
    await this.ask('POST', '/window/rect', SIZE);
  }

  async ask(method, path, body) {
    const answer = await fetch(this.address + path, {
      method,
      body: body === undefined ? undefined : JSON.stringify(body),
      signal: AbortSignal.timeout(LONGEST_MS),
    });
    const { value } = await answer.json();
    if (!answer.ok) {
      throw new Error(`${path}: ${value.error}: ${value.message}`);
    }
    return value;
  }

  async kill() {
    await this.driver?.kill();
    await this.screen?.kill();
  }

  goto = (url) => this.ask('POST', '/url', { url });
  reload = () => this.ask('POST', '/refresh', {});

  async run(source, given) {
    const script = `const done = arguments[0];
      (async () => JSON.stringify(await (${source})(${JSON.stringify(given)}) ?? null))().then(done, (error) => done(JSON.stringify({ thrown: String(error) })))`;
    const value = JSON.parse(await this.ask('POST', '/execute/async', { script, args: [] }));
    if (value?.thrown !== undefined) {
      throw new Error(value.thrown);
    }
    return value;
  }

  async find(source, given) {
    const element = await this.ask('POST', '/execute/sync', { script: `return (${source})(${JSON.stringify(given)})`, args: [] });
    return element === null ? null : Object.values(element)[0];
  }

  click = (element) => this.ask('POST', `/element/${element}/click`, {});
  keys = (element, text) => this.ask('POST', `/element/${element}/value`, { text });
  choose = (element, path) => this.keys(element, path);
  saved = (act) => savedInto(this.downloads, act);
}

// MiniBrowser without automation, with a profile on disk: what is to be done is fetched by the page itself, from the
// server that it came from, as scripts. Taps and keys are the page's own, so it is for what outlives a kill.
class WebKitKept extends OnScreen {
  constructor(bench, site) {
    super(bench);
    this.waiting = new Map();
    this.last = 0;
    const [files] = site.server.listeners('request');
    site.server.removeAllListeners('request');
    site.server.on('request', (request, response) =>
      request.url.startsWith(ORDERS) ? this.answer(request, response) : files(request, response),
    );
    // Before anything else of the page, and for every start of it.
    const first = join(site.folder, 'theme.js');
    writeFileSync(first, `(${takeOrders})(${JSON.stringify(ORDERS)});\n${readFileSync(first, 'utf8')}`);
    writeWorker(site.folder);
  }

  // A script that was ordered is fetched; or the last one is answered and the next one asked for.
  async answer(request, response) {
    const order = this.waiting.get(Number(request.url.slice(ORDERS.length)));
    if (request.method === 'GET') {
      response.writeHead(order === undefined ? 404 : 200, { 'content-type': 'text/javascript' });
      response.end(order?.script);
      return;
    }
    const { id, value, thrown } = JSON.parse((await request.toArray()).join(''));
    const answered = this.waiting.get(id);
    this.waiting.delete(id);
    if (thrown === undefined) {
      answered?.done(value);
    } else {
      answered?.failed(new Error(thrown));
    }
    this.page = response;
    this.order();
  }

  // Gives the page the next order, when both are there.
  order() {
    const [id] = this.waiting.keys();
    if (id !== undefined) {
      this.page?.end(String(id));
      this.page = undefined;
    }
  }

  run(source, given) {
    this.last += 1;
    const id = this.last;
    const script = `export default () => (${source})(${JSON.stringify(given)});`;
    return new Promise((done, failed) => {
      this.waiting.set(id, { script, done, failed });
      this.order();
    });
  }

  open = () => (this.screen === undefined ? this.openScreen() : undefined);

  async goto(url) {
    this.browser = new Program(miniBrowser(), [url], { env: this.env });
  }

  // Once this is answered.
  reload = () => this.run(() => setTimeout(() => location.reload(), 100) && null);

  // Every process of the browser at once.
  async kill() {
    await this.browser?.kill();
    this.page = undefined;
    this.waiting.forEach(({ failed }) => failed(new Error('WebKitGTK is gone')));
    this.waiting.clear();
  }

  async close() {
    await this.kill();
    await this.screen?.kill();
  }

  find = (source, given) => this.run(`(given) => (window.found = (${source})(given)) === null ? null : true`, given);
  click = () => this.run(() => window.found.click());
  keys = (_, text) =>
    this.run((typed) => {
      window.found.value = typed;
      window.found.dispatchEvent(new Event('input', { bubbles: true }));
    }, text);
}

function miniBrowser() {
  for (const folder of ['x86_64-linux-gnu', 'aarch64-linux-gnu'].map((name) => join('/usr/lib', name))) {
    for (const name of existsSync(folder) ? readdirSync(folder) : []) {
      const path = join(folder, name, 'MiniBrowser');
      if (/^webkit2?gtk-/.test(name) && existsSync(path)) {
        return path;
      }
    }
  }
  throw new Error('MiniBrowser of WebKitGTK is not there');
}

// Those whose storage outlives a kill.
export const KILLABLE = { Chromium, Firefox, WebKitGTK: WebKitKept };
export const ENGINES = { Chromium, Firefox, WebKitGTK: WebKit };

// These run in the page.
const takeOrders = async (orders) => {
  let told = {};
  for (;;) {
    const answer = await fetch(orders, { method: 'POST', body: JSON.stringify(told) });
    const id = Number(await answer.text());
    const { default: order } = await import(`${orders}${id}`);
    told = await Promise.resolve().then(order).then((value) => ({ id, value: value ?? null }), (error) => ({ id, thrown: String(error) }));
  }
};
const byName = (name) => {
  const plain = (text) => text.replace(/\s+/g, ' ').trim();
  const things = [...document.querySelectorAll('a[href], button, summary, label')].filter((thing) => thing.checkVisibility());
  const named = things.map((thing) => [thing, plain(thing.getAttribute('aria-label') ?? thing.textContent)]);
  const found = named.find(([, text]) => text === name) ?? named.find(([, text]) => text.startsWith(name));
  found?.[0].scrollIntoView({ block: 'center', behavior: 'instant' });
  return found?.[0] ?? null;
};
export const bySelector = (selector) => {
  const found = document.querySelector(selector);
  found?.scrollIntoView({ block: 'center', behavior: 'instant' });
  return found;
};
const cleared = (selector) => {
  const field = document.querySelector(selector);
  if (field?.checkVisibility() !== true) {
    return null;
  }
  field.scrollIntoView({ block: 'center', behavior: 'instant' });
  field.focus();
  field.select();
  return field;
};
const fill = ([selector, text]) => {
  const field = document.querySelector(selector);
  if (field === null) {
    return false;
  }
  const option = [...(field.options ?? [])].find((one) => one.text === text);
  field.value = option?.value ?? text;
  ['input', 'change'].forEach((kind) => field.dispatchEvent(new Event(kind, { bubbles: true })));
  return true;
};

// A phone of one of the engines and what a thumb does on it. Everything waits for what it needs.
export class EnginePhone {
  constructor(door) {
    this.door = door;
  }

  // Waits until the page gives something else than null or false, which it gives.
  async wait(what, ask) {
    let found = null;
    let why = '';
    const isFound = async () => {
      try {
        found = await ask();
      } catch (error) {
        // A page that is being loaded has no answer.
        why = `, ${error.message}`;
      }
      return found !== null && found !== false;
    };
    await until(what, isFound, LONGEST_MS).catch(async (error) => {
      throw new Error(`${error.message}${why}\n${await this.words().catch(String)}`);
    });
    return found;
  }

  run(work, given = null) {
    return this.door.run(work.toString(), given);
  }

  async open(url) {
    await this.door.goto(url);
    await this.started();
  }

  async reload() {
    await this.door.reload();
    await this.started();
  }

  started = () => this.has('html[data-started="true"] #app h1');
  offlineReady = () => this.has('html[data-offline="ready"]');
  has = (selector) => this.wait(selector, () => this.run((one) => document.querySelector(one) !== null, selector));

  // The text of the page with plain spaces.
  words = () => this.run(() => document.body.innerText.replace(/\s+/g, ' '));
  sees = (pattern) => this.wait(`${pattern} on screen`, async () => (await this.words()).match(pattern));

  // Waits for a screen by what stands on it.
  async go(hash, selector = 'main h1') {
    await this.run((one) => {
      location.hash = one;
    }, hash);
    await this.has(selector);
  }

  async tap(name) {
    await this.press(`something to tap on named ${name}`, byName, name);
  }

  // Where it moves away under the thumb, it is tried again.
  press(what, where, given) {
    return this.wait(what, async () => {
      const thing = await this.door.find(where.toString(), given);
      return thing !== null && this.door.click(thing).then(() => true);
    });
  }

  // Types with keys.
  async type(selector, text) {
    const field = await this.wait(`the field ${selector}`, () => this.door.find(cleared.toString(), selector));
    await this.door.keys(field, text);
  }

  // Sets a date, a time, a choice or a long text, as each browser has a picker of its own for these.
  fill = (selector, text) => this.wait(`the field ${selector}`, () => this.run(fill, [selector, text]));

  async choose(selector, path) {
    const field = await this.wait(`the field ${selector}`, () => this.door.find(bySelector.toString(), selector));
    await this.door.choose(field, path);
  }

  // The file that a tap saves.
  saved = (name) => this.door.saved(() => this.tap(name));

  kept = () => this.has('.status-line p[data-kept="Kept"]');

  async journal() {
    await this.go('#/journal', '.journal-line');
    return this.run(() => [...document.querySelectorAll('.journal-line__words')].map((line) => line.innerText.replace(/\s+/g, ' ').trim()));
  }

  // Types a remark.
  async typeNote(text) {
    await this.go('#/journal', '#note');
    await this.run(() => {
      document.querySelector('#note').closest('details').open = true;
    });
    await this.type('#note', text);
    await this.run(() => {
      document.querySelector('#note').closest('details').querySelector('button').id = 'keep-note';
    });
  }

  // What keeps it.
  keepNote = () => this.door.find(bySelector.toString(), '#keep-note');

  // Types a remark and waits until it is taken into the journal.
  async note(text) {
    await this.typeNote(text);
    await this.press('Keep', bySelector, '#keep-note');
    await this.wait(`${text} is noted`, () =>
      this.run((one) => document.querySelector('.status-line')?.innerText.includes(one) ?? false, text));
  }
}

const startedBefore = new Set();

// A phone that is on. An engine that cannot be started here at all is told of and left out.
export const phoneOf = async (bench, engine, site, doors = ENGINES) => {
  const door = new doors[engine](bench, site);
  bench.closers.unshift(() => (door.close ?? door.kill).call(door));
  await door.open().catch((error) => {
    test.skip(!startedBefore.has(engine), `${engine} cannot be started here: ${error.message}`);
    throw error;
  });
  startedBefore.add(engine);
  return new EnginePhone(door);
};

// With the made-up chick, taken in as a backup.
export const withChick = async (phone) => {
  const today = daysAgo(0);
  const plan = { name: CHICK.name, hatched: daysAgo(92), reference: { g10: 10_400, day: today } };
  await phone.go('#/take-in', '#paste');
  await phone.fill('#paste', new Script().added(`${daysAgo(1)}T00:00`, plan).backup());
  await phone.tap('Next');
  await phone.tap('Import');
  await phone.has('.top-bar__name');
};

// On a busy machine a database may open later than the app waits for it. It says so then, and opens it again with a
// later act, after ten seconds (src/store/save_state.rs), or a later start.
export const isSoon = (ask) => until('it comes', ask, 12_000).then(() => true, () => false);
export const comesBack = (phone, text) =>
  phone.wait(`${text} is in the journal`, async () => {
    await phone.run(() => {
      location.hash = '#/journal';
    });
    return (await isSoon(async () => (await phone.words()).includes(text))) || phone.reload().then(() => false);
  });
