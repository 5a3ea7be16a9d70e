// Measures the built app: bytes of the first load after brotli, and Lighthouse as on a slow phone, median of five.
// It tells numbers and judges none: on a busy machine the times are worse than on a phone.
import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompressSync } from 'node:zlib';
import { serve } from './serve.mjs';

const FOLDER = 'dist';
const RUNS = 5;
const LIGHTHOUSE = '.tools/lighthouse/node_modules/.bin/lighthouse';
const BROWSER_FLAGS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const METRICS = [
  'first-contentful-paint',
  'largest-contentful-paint',
  'speed-index',
  'total-blocking-time',
  'cumulative-layout-shift',
];
const CATEGORIES = ['performance', 'accessibility', 'best-practices'];

const tellSizes = () => {
  // The PNG icons are for the system's own screens: the page does not ask for them.
  const rows = readdirSync(FOLDER, { recursive: true })
    .map(String)
    .filter((name) => /\.(html|css|js|wasm|svg|webmanifest)$/.test(name))
    .sort()
    .map((name) => {
      const bytes = readFileSync(join(FOLDER, name));
      return { name, raw: bytes.length, packed: brotliCompressSync(bytes).length };
    });
  const sum = (column) => rows.reduce((all, row) => all + row[column], 0);
  for (const { name, raw, packed } of [...rows, { name: 'first load', raw: sum('raw'), packed: sum('packed') }]) {
    console.log(`${name.padEnd(40)} ${String(raw).padStart(9)} bytes ${String(packed).padStart(8)} brotli`);
  }
};

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const lighthouse = async (address) => {
  const { stdout } = await promisify(execFile)(
    LIGHTHOUSE,
    [
      address,
      `--chrome-flags=${BROWSER_FLAGS.join(' ')}`,
      `--only-categories=${CATEGORIES.join(',')}`,
      '--output=json',
      '--quiet',
      '--no-enable-error-reporting',
    ],
    { maxBuffer: 64 * 1024 * 1024 },
  );
  const { audits, categories } = JSON.parse(stdout);
  return Object.fromEntries([
    ...METRICS.map((name) => [name, audits[name].numericValue]),
    ...CATEGORIES.map((name) => [name, categories[name].score * 100]),
  ]);
};

tellSizes();
const server = await serve({ folder: FOLDER });
const runs = [];
for (let run = 0; run < RUNS; run += 1) {
  runs.push(await lighthouse(`http://127.0.0.1:${server.address().port}/`));
}
server.close();
server.closeAllConnections();
for (const name of [...METRICS, ...CATEGORIES]) {
  const values = runs.map((run) => run[name]);
  const shown = values.map((value) => Number(value.toFixed(3))).join(' ');
  console.log(`${name.padEnd(28)} median ${String(Number(median(values).toFixed(3))).padStart(8)}   of ${shown}`);
}
