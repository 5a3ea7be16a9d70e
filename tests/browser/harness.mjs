// What every browser test stands on: a server, a phone, and a record of everything that went wrong.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { serve } from '../../.build/serve.mjs';

const require = createRequire(import.meta.url);
const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const AXE_RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const SHOTS = fileURLToPath(new URL('./shots/', import.meta.url));
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const PHONE = { width: 360, height: 800 };

export const DIST = fileURLToPath(new URL('../../dist/', import.meta.url));

const browserPath = () => process.env.CHROME_PATH || '/usr/bin/chromium';
const howToStart = () => ({ executablePath: browserPath(), headless: true, args: FLAGS });

// A browser that phones can share, each without a trace of the others.
export const sharedBrowser = () => chromium.launch(howToStart());

// A cell of the table of faults (.build/prove.mjs): what was tried how often in which engine, how many entries were
// lost that had been shown as kept, and what stood on the screen. Anything lost fails the test.
export const tell = ({ fault, engine = 'Chromium', trials, lost, said, note }) => {
  const words = said.replace(/\s+/g, ' ').trim();
  if (process.env.FAULT_LINES !== undefined) {
    appendFileSync(process.env.FAULT_LINES, `${JSON.stringify({ fault, engine, trials, lost: lost.length, said: words, note })}\n`);
  }
  assert.deepEqual(lost, [], `${engine}: ${fault}`);
};

// Asks again and again until the answer is true.
export const until = async (what, ask, timeoutMs = 10_000) => {
  const end = Date.now() + timeoutMs;
  while (!(await ask())) {
    if (Date.now() > end) {
      throw new Error(`waited ${timeoutMs} ms in vain: ${what}`);
    }
    await sleep(50);
  }
};

// Runs an expression past the page's content policy.
const evaluatePastPolicy = async (page, expression) => {
  const session = await page.context().newCDPSession(page);
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression,
    awaitPromise: true,
    returnByValue: true,
    allowUnsafeEvalBlockedByCSP: true,
  });
  await session.detach();
  if (exceptionDetails !== undefined) {
    throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text);
  }
  return result.value;
};

// The accessibility faults that axe finds on the page as it is now, one line each.
export const axe = async (page) => {
  const rules = JSON.stringify(AXE_RULES);
  await evaluatePastPolicy(page, `${AXE}; undefined`);
  const { violations, passes } = await evaluatePastPolicy(
    page,
    `axe.run(document, { runOnly: ${rules}, resultTypes: ['violations'] }).then(({ violations, passes }) => ({
      passes: passes.length,
      violations: violations.map(({ id, help, nodes }) => id + ': ' + help + ': ' + nodes.map((node) => node.html).join(' | ')),
    }))`,
  );
  if (passes === 0) {
    throw new Error('axe has checked nothing');
  }
  return violations;
};

// A picture of the page in tests/browser/shots/.
export const shot = async (page, name) => {
  mkdirSync(SHOTS, { recursive: true });
  await page.screenshot({ path: join(SHOTS, `${name}.png`) });
};

// Slows the page's processor down by a factor.
export const throttle = async (page, rate) => {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
};

// Sets the page's clock, before the page is opened. It runs on from there.
export const clock = (page, iso) => page.clock.install({ time: new Date(iso) });

// By how many pixels the page is wider than its window.
export const overflow = (page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

// A site and a phone on which no worker answers, so that a test can hold or refuse what the page asks for.
export const withoutWorker = async (bench, options = {}) => {
  const site = await bench.site();
  return { site, ...(await bench.phone(site, { serviceWorkers: 'block', ...options })) };
};

// Holds back every answer to what fits `pattern`, until the function that it gives is called.
export const holdBack = async (context, pattern) => {
  let release;
  const held = new Promise((done) => {
    release = done;
  });
  await context.route(pattern, async (route) => {
    await held;
    await route.continue();
  });
  return release;
};

// Words of up to seven letters that are cut in two; longer ones may have to be, in the largest text.
export const cutWords = (page) =>
  page.evaluate(() => {
    const cut = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const node = walker.currentNode;
      if (!node.parentElement.checkVisibility()) {
        continue;
      }
      for (const { 0: word, index } of node.data.matchAll(/(?<!\p{L})\p{L}{2,7}(?!\p{L})/gu)) {
        const range = document.createRange();
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (lines.size > 1) {
          cut.push(word);
        }
      }
    }
    return cut;
  });

// Waits until the app is on screen.
export const started = (page) => page.locator('html[data-started="true"] #app h1').first().waitFor();

// Waits until every file is kept for use without a network.
export const offlineReady = (page) => page.locator('html[data-offline="ready"]').waitFor({ state: 'attached' });

// The names of the browser's caches for this origin.
export const cacheNames = (page) => page.evaluate(() => caches.keys());

// A browser that was stopped in the middle of going elsewhere may never say that a phone is closed; it is ended itself
// when the tests are over, so no test waits for it.
const closed = (context) => Promise.race([context.close(), sleep(10_000, undefined, { ref: false })]);

class Site {
  constructor(folder, base) {
    this.folder = folder;
    this.base = base;
    this.port = 0;
    this.server = null;
  }

  get origin() {
    return `http://127.0.0.1:${this.port}`;
  }

  get url() {
    return this.origin + this.base;
  }

  // Starts it, on the same port as before.
  async start() {
    this.server = await serve({ folder: () => this.folder, port: this.port, base: this.base });
    this.port = this.server.address().port;
  }

  // Stops it and cuts open connections, as when the signal is gone.
  async stop() {
    const server = this.server;
    if (server === null) {
      return;
    }
    this.server = null;
    const closed = new Promise((done) => {
      server.close(done);
    });
    server.closeAllConnections();
    await closed;
  }
}

// A browser process of its own that can be killed like a phone's, and opened again on the same profile.
class Killable {
  constructor(profile, watch, env) {
    this.profile = profile;
    this.watch = watch;
    this.env = { ...process.env, ...env };
    this.child = null;
    this.browser = null;
  }

  async open() {
    const portFile = join(this.profile, 'DevToolsActivePort');
    rmSync(portFile, { force: true });
    const size = `--window-size=${PHONE.width},${PHONE.height}`;
    const args = [...FLAGS, '--headless=new', size, '--remote-debugging-port=0', `--user-data-dir=${this.profile}`, 'about:blank'];
    this.child = spawn(browserPath(), args, { detached: true, stdio: 'ignore', env: this.env });
    await until('the browser listens', () => existsSync(portFile) && readFileSync(portFile, 'utf8').includes('\n'), 30_000);
    const [port] = readFileSync(portFile, 'utf8').split('\n');
    this.browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const [context] = this.browser.contexts();
    await this.watch(context);
    return context.pages()[0] ?? context.newPage();
  }

  // Kills every process of the browser at once, without a chance to tidy up.
  async kill() {
    const { child } = this;
    if (child === null) {
      return;
    }
    this.child = null;
    const gone = new Promise((done) => {
      child.once('exit', done);
    });
    process.kill(-child.pid, 'SIGKILL');
    await gone;
    await this.browser?.close().catch(() => {});
  }
}

// What a test works with. Its phones share `browser`; without one each is a browser with a profile of its own.
export class Bench {
  constructor(browser = null) {
    this.browser = browser;
    this.closers = [];
    this.problems = [];
    this.allowed = [];
  }

  // A fresh folder that is removed at the end.
  folder() {
    const path = mkdtempSync(join(tmpdir(), 'perchlight-test-'));
    this.closers.unshift(() => rmSync(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }));
    return path;
  }

  // A copy of the built app that a test may change.
  copyOfBuild() {
    const path = this.folder();
    // Packed files stay as new as what they were packed from.
    cpSync(DIST, path, { recursive: true, preserveTimestamps: true });
    return path;
  }

  // A running server for a build, on a free port.
  async site({ folder = DIST, base = '/' } = {}) {
    const site = new Site(folder, base);
    await site.start();
    this.closers.push(() => site.stop());
    return site;
  }

  // Faults with these words are what this test is about. Everything else fails the test.
  allow(...patterns) {
    this.allowed.push(...patterns);
  }

  // A phone with an empty profile; what goes wrong on it fails the test.
  async phone(site, { theme = 'dark', viewport = PHONE, ...options } = {}) {
    const settings = {
      viewport,
      isMobile: true,
      hasTouch: true,
      colorScheme: theme,
      locale: 'en-GB',
      timezoneId: 'Europe/London',
      ...options,
    };
    const context =
      this.browser === null
        ? await chromium.launchPersistentContext(this.folder(), { ...howToStart(), ...settings })
        : await this.browser.newContext(settings);
    this.closers.unshift(() => closed(context));
    await this.watch(context, site);
    return { context, page: context.pages()[0] ?? (await context.newPage()) };
  }

  // Records requests to other origins (those of the offline worker too), what the content policy stopped,
  // console errors and thrown errors.
  async watch(context, site) {
    context.on('request', (request) => {
      const { protocol, origin } = new URL(request.url());
      // Web sockets are asked for as ws: and stopped before they are requests; see the policy's reports.
      if (protocol.startsWith('http') && origin !== site.origin) {
        this.problems.push(`request to another origin: ${request.url()}`);
      }
    });
    // Reports of the browser itself (W3C Content Security Policy 3, 5.3); what axe runs goes past the policy.
    await context.exposeBinding('reportOfPolicy', (_, report) => this.problems.push(`content policy: ${report}`));
    await context.addInitScript(() => {
      const report = window.reportOfPolicy;
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sourceFile, lineNumber }) =>
        report(`${effectiveDirective} stopped ${blockedURI} (${sourceFile}:${lineNumber})`),
      );
    });
    context.on('console', (message) => {
      if (message.type() === 'error') {
        this.problems.push(`console error: ${message.text()} (${message.location().url})`);
      }
    });
    context.on('weberror', (error) => this.problems.push(`thrown: ${error.error().message}`));
  }

  // What goes wrong on it fails the test, as on a phone.
  killable(site, env = {}) {
    const killable = new Killable(this.folder(), (context) => this.watch(context, site), env);
    this.closers.unshift(() => killable.kill());
    return killable;
  }

  unexpected() {
    return this.problems.filter((problem) => !this.allowed.some((pattern) => pattern.test(problem)));
  }

  async clear() {
    for (const close of this.closers) {
      await close();
    }
  }
}
