// What a screen reader is given, read from the browser's own accessibility tree: names, roles, and what
// speaks up by itself.
import assert from 'node:assert/strict';
import { test } from './fixtures.mjs';
import { clock, until } from './harness.mjs';
import { go, kept, logNextFeed, openApp, press, typeInChick } from './owner.mjs';
import { STATES, walk, withLosingChick } from './states.mjs';

// The nodes that a screen reader is given.
const tree = async (page) => {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  await session.detach();
  const property = (node, name) => node.properties?.find((found) => found.name === name)?.value.value;
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  return nodes.filter((node) => !node.ignored).map((node) => {
    const parents = [];
    for (let at = node; at !== undefined; at = byId.get(at.parentId)) {
      parents.push(at);
    }
    const live = parents.map((parent) => property(parent, 'live')).find((value) => value !== undefined && value !== 'off');
    return {
      role: node.role.value,
      name: (node.name?.value ?? '').replaceAll('\u00a0', ' ').trim(),
      isFocusable: property(node, 'focusable') === true,
      live,
      parents: parents.slice(1).map((parent) => parent.role?.value),
    };
  });
};

const PRESSED = new Set(['button', 'link', 'textbox', 'radio', 'combobox', 'checkbox', 'DisclosureTriangle', 'Date', 'InputTime', 'searchbox', 'listbox', 'spinbutton', 'menuitem', 'tab', 'switch']);

test('everything that can be used has a name and a role of its own, on every screen in every state', async ({ bench }) => {
  test.setTimeout(180_000);
  const page = await withLosingChick(bench);
  const roles = new Set();
  await walk(page, STATES, async (name) => {
    const nodes = await tree(page);
    const used = nodes.filter((node) => node.role !== 'RootWebArea' && (node.isFocusable || PRESSED.has(node.role)));
    assert.ok(used.length > 3, name);
    used.forEach((node) => roles.add(node.role));
    assert.deepEqual(used.filter((node) => node.name === ''), [], `${name}: without a name`);
    assert.deepEqual(used.filter((node) => ['generic', 'none', 'paragraph'].includes(node.role)), [], `${name}: without a role`);
    assert.deepEqual(nodes.filter(({ role, name }) => role === 'image' && name === ''), [], `${name}: a picture without words`);
    assert.equal(nodes.filter(({ role }) => role === 'main').length, 1, `${name}: one main part`);
    const headings = nodes.filter(({ role, parents }) => role === 'heading' && parents.includes('main'));
    assert.ok(headings.length >= 1, `${name}: a heading`);
  });
  // That the tree was read at all, and the roles that this test knows are those that there are.
  for (const role of ['button', 'link', 'textbox', 'radio', 'combobox', 'DisclosureTriangle']) {
    assert.ok(roles.has(role), `${role} among ${[...roles]}`);
  }
});

const withChick = async (bench) => {
  const site = await bench.site();
  const { page } = await bench.phone(site);
  await clock(page, '2026-11-24T20:30:00Z');
  await openApp(page, site);
  await typeInChick(page);
  await kept(page);
  return page;
};

// Counts changes within anything that is read out by itself when it changes.
const listen = (page) =>
  page.evaluate(() => {
    const LIVE = '[role="status"], [role="alert"], [role="log"], [role="timer"], [aria-live]:not([aria-live="off"]), output';
    window.spoken = [];
    const note = (changes) => {
      for (const { target, addedNodes } of changes) {
        const element = target.nodeType === Node.ELEMENT_NODE ? target : target.parentElement;
        const added = [...addedNodes].flatMap((node) => (node.querySelectorAll ? [node, ...node.querySelectorAll('*')] : []));
        const live = element?.closest(LIVE) ?? added.find((node) => node.matches(LIVE));
        // A notice that leaves says nothing.
        if (live && live.textContent.trim() !== '') {
          window.spoken.push(live.textContent);
        }
      }
    };
    new MutationObserver(note).observe(document.body, { childList: true, characterData: true, subtree: true });
  });

test('the countdown is not read out: nothing speaks while the clock runs, on Now and at the cup', async ({ bench }) => {
  const page = await withChick(bench);
  await go(page, '#/now');
  const countdown = await page.locator('.next-feed__countdown').innerText();
  const nodes = await tree(page);
  // Number and unit are two texts.
  const [number] = countdown.split('\u00a0');
  const shown = nodes.filter(({ name }) => name === number);
  assert.ok(shown.length > 0, countdown);
  assert.deepEqual(shown.filter(({ live }) => live !== undefined), []);
  await listen(page);
  await page.clock.runFor('00:05:00');
  assert.notEqual(await page.locator('.next-feed__countdown').innerText(), countdown, 'the clock on screen has run');
  assert.deepEqual(await page.evaluate(() => window.spoken), []);

  await go(page, '#/guide');
  await press(page, 'flat');
  await page.locator('.guide__next').click();
  await page.locator('#cup').fill('42');
  await page.locator('main button[type="submit"]').click();
  await page.locator('.cup[data-heat="hot"]').waitFor();
  const window = await page.locator('.cup__window').innerText();
  await page.evaluate(() => {
    window.spoken = [];
  });
  await page.clock.runFor('00:00:30');
  assert.notEqual(await page.locator('.cup__window').innerText(), window, 'the clock on screen has run');
  assert.deepEqual(await page.evaluate(() => window.spoken), []);
});

test('"kept" is said politely, a fault at once, and both are seen by the listener above', async ({ bench }) => {
  const page = await withChick(bench);
  await go(page, '#/now');
  await listen(page);
  await logNextFeed(page);
  await kept(page);
  const said = (await tree(page)).filter(({ name, live }) => /Bedtime feed, 60 ml\. Kept\./.test(name) && live !== undefined);
  assert.deepEqual([...new Set(said.map(({ live }) => live))], ['polite']);
  assert.ok((await page.evaluate(() => window.spoken)).some((text) => text.includes('Kept.')));

  // Every form, sent with nothing in it.
  for (const screen of ['weigh', 'crop', 'droppings', 'solids', 'type-in', 'take-in']) {
    await go(page, `#/${screen}`);
    await page.locator('main button[type="submit"]').last().click();
    const words = async () => (await page.locator('main .fault').allInnerTexts()).filter((text) => text.trim() !== '');
    await until(`a fault on ${screen}`, async () => (await words()).length > 0);
    const nodes = await tree(page);
    for (const text of await words()) {
      const plain = text.replaceAll('\u00a0', ' ').trim();
      const spoken = nodes.filter(({ name, role, live }) => role === 'StaticText' && plain.includes(name) && live === 'assertive');
      assert.ok(spoken.length > 0, `${screen}: ${text}`);
    }
  }
});

test('each field says which of its faults is meant', async ({ bench }) => {
  const page = await withChick(bench);
  for (const [screen, field, text] of [['weigh', '#weight', 'heavy'], ['log', '#taken', 'lots']]) {
    await go(page, `#/${screen}`);
    await page.locator(field).fill(text);
    await page.locator('main button[type="submit"]').last().click();
    const input = page.locator(`${field}[aria-invalid="true"]`);
    await input.waitFor();
    const ids = (await input.getAttribute('aria-describedby')).split(' ');
    const texts = await Promise.all(ids.map((id) => page.locator(`#${id}`).innerText()));
    assert.ok(texts.some((text) => /digits only/.test(text)), JSON.stringify(texts));
  }
});
