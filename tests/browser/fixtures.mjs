// What every browser test is given: a bench of its own, which is judged and cleared away afterwards.
import assert from 'node:assert/strict';
import { test as base } from '@playwright/test';
import { Bench, sharedBrowser } from './harness.mjs';

export const test = base.extend({
  // Whether each phone is a browser of its own with a profile on disk, which takes a second more to start.
  ownProfile: [false, { option: true, scope: 'worker' }],
  sharedBrowser: [
    async ({ ownProfile }, use) => {
      const browser = ownProfile ? null : await sharedBrowser();
      await use(browser);
      await browser?.close();
    },
    { scope: 'worker' },
  ],
  bench: [
    async ({ sharedBrowser }, use) => {
      const bench = new Bench(sharedBrowser);
      await use(bench);
      const unexpected = bench.unexpected();
      await bench.clear();
      assert.deepEqual(unexpected, [], 'what went wrong beside the test');
    },
    // For the clearing away, beside the test's own time.
    { timeout: 30_000 },
  ],
});
