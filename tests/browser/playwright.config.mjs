// How the browser tests run: node_modules/.bin/playwright test --grep WORD
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from '@playwright/test';
import { DIST } from './harness.mjs';

if (!existsSync(join(DIST, 'sw.js'))) {
  throw new Error('There is no build in dist/: run make build first.');
}

// They kill browsers, wait by the real clock or ask what a profile on disk keeps; never two of them at a time.
const ALONE = /(faults_kill|faults_storage|faults_time|install|keeping|hosting|offline|pieces|start|update)\.test\.mjs$/;

export default defineConfig({
  testMatch: '*.test.mjs',
  outputDir: '../../target/browser-tests',
  fullyParallel: true,
  workers: 2,
  // A browser that stalls on a busy machine is no fault of the app; the last lines name every test that was tried again.
  retries: 1,
  timeout: 60_000,
  reporter: [['list'], ['./count.mjs']],
  use: { actionTimeout: 30_000, navigationTimeout: 30_000, trace: 'off' },
  projects: [
    { name: 'serial', testMatch: ALONE, workers: 1, use: { ownProfile: true } },
    { name: 'parallel', testIgnore: ALONE },
  ],
});
