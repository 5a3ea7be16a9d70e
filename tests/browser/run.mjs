// Runs the browser tests: node tests/browser/run.mjs [WORD...]
// With words, only tests whose file or name holds one of them.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Bench, DIST, tests } from './harness.mjs';

const here = fileURLToPath(new URL('.', import.meta.url));
const words = process.argv.slice(2).map((word) => word.toLowerCase());

const within = async (timeoutMs, work) => {
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error(`not done after ${timeoutMs} ms`)), timeoutMs);
  });
  try {
    await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
};

const runOne = async ({ body, timeoutMs }) => {
  const bench = new Bench();
  const faults = [];
  try {
    await within(timeoutMs, body(bench));
  } catch (error) {
    faults.push(error.stack ?? String(error));
  }
  faults.push(...bench.unexpected());
  try {
    await within(30_000, bench.clear());
  } catch (error) {
    faults.push(`could not tidy up: ${error.message}`);
  }
  return faults;
};

if (!existsSync(join(DIST, 'sw.js'))) {
  console.error('There is no build in dist/: run make build first.');
  process.exit(1);
}
let passed = 0;
let failed = 0;
for (const file of readdirSync(here).filter((name) => name.endsWith('.test.mjs')).sort()) {
  tests.length = 0;
  await import(join(here, file));
  for (const test of [...tests]) {
    const full = `${file.replace('.test.mjs', '')}: ${test.name}`;
    if (words.length > 0 && !words.some((word) => full.toLowerCase().includes(word))) {
      continue;
    }
    const start = performance.now();
    const faults = await runOne(test);
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    if (faults.length === 0) {
      passed += 1;
      console.log(`ok      ${full} (${seconds} s)`);
    } else {
      failed += 1;
      console.log(`FAILED  ${full} (${seconds} s)`);
      faults.forEach((fault) => console.log(`        ${fault.replaceAll('\n', '\n        ')}`));
    }
  }
}
if (passed + failed === 0) {
  console.log('No test has run.');
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 || passed === 0 ? 1 : 0);
