// Measures the built app against its budgets: bytes of the first load after brotli, Lighthouse as on a slow phone
// (median of five), times and memory in the browser, one outlook natively. With WRITE=1 the table goes into
// DEVELOPERS.md. On a busy machine the times are worse than on a phone.
import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompressSync } from 'node:zlib';
import { measureApp, median, outlookMs } from './measure_app.mjs';
import { twinRows } from './measure_twin.mjs';
import { table, writeBetween } from './page.mjs';
import { serve } from './serve.mjs';
import { isLater } from './split.mjs';

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
  const first = rows.filter(({ name }) => !isLater(name));
  const sum = (rows, column) => rows.reduce((all, row) => all + row[column], 0);
  const sumOf = (name, rows) => ({ name, raw: sum(rows, 'raw'), packed: sum(rows, 'packed') });
  for (const { name, raw, packed } of [...rows, sumOf('first load', first), sumOf('with what follows', rows)]) {
    console.log(`${name.padEnd(40)} ${String(raw).padStart(9)} bytes ${String(packed).padStart(8)} brotli`);
  }
  const program = first.filter(({ name }) => name.endsWith('.wasm'));
  return { first: sum(first, 'packed'), program: sum(program, 'packed'), all: sum(rows, 'packed') };
};

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

const sizes = tellSizes();
const server = await serve({ folder: FOLDER });
const runs = [];
for (let run = 0; run < RUNS; run += 1) {
  runs.push(await lighthouse(`http://127.0.0.1:${server.address().port}/`));
}
server.close();
server.closeAllConnections();
const found = {};
for (const name of [...METRICS, ...CATEGORIES]) {
  const values = runs.map((run) => run[name]);
  found[name] = median(values);
  const shown = values.map((value) => Number(value.toFixed(3))).join(' ');
  console.log(`${name.padEnd(28)} median ${String(Number(found[name].toFixed(3))).padStart(8)}   of ${shown}`);
}

const { oneChick, manyEntries } = await measureApp();
const { heap, wasm } = manyEntries.memory;
const outlook = outlookMs();
const MIB = 1 << 20;
for (const [name, values] of Object.entries({
  'start, processor time': oneChick.workMs,
  [`start with ${manyEntries.entries} entries, processor time`]: manyEntries.workMs,
  'warm offline start, 6x slowed': oneChick.warmOfflineStartMs,
  'Done to kept, 4x slowed': oneChick.tapToKeptMs,
  [`start with ${manyEntries.entries} entries, 4x slowed`]: manyEntries.startMs,
  [`Done to kept with ${manyEntries.entries} entries, 4x slowed`]: manyEntries.tapToKeptMs,
})) {
  console.log(`${name.padEnd(48)} median ${median(values).toFixed(0)} ms of ${values.map((value) => value.toFixed(0)).join(' ')}`);
}
console.log(`memory with ${manyEntries.entries} entries: heap ${(heap / MIB).toFixed(1)} MiB, WebAssembly ${(wasm / MIB).toFixed(1)} MiB`);
console.log(`outlook on 5,000 entries: ${outlook} ms`);

// What was measured, with a word when it is over the budget.
const against = (text, isMet) => (isMet ? text : `${text}, not met`);
const inSeconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
const inTime = (times, work, budgetMs) =>
  `${against(inSeconds(median(times)), median(times) <= budgetMs)} (processor time, not slowed: ${inSeconds(median(work))})`;
const kilobytes = (bytes) => `${Math.round(bytes / 1000)} kB`;
const byLighthouse = {
  fcp: found['first-contentful-paint'],
  lcp: found['largest-contentful-paint'],
  tbt: found['total-blocking-time'],
  cls: found['cumulative-layout-shift'],
};
const isQuick = byLighthouse.fcp <= 1070 && byLighthouse.lcp <= 1550 && byLighthouse.tbt <= 66 && byLighthouse.cls <= 0.04;
const scores = CATEGORIES.map((name) => `${name} ${Math.round(found[name])}`).join(', ');
const budgets = [
  ['first load: everything until the first screen can be used, brotli', '200 kB', against(`${kilobytes(sizes.first)} (program ${kilobytes(sizes.program)})`, sizes.first <= 200_000)],
  ['with the pieces that follow behind the first screen', '—', kilobytes(sizes.all)],
  [
    'Lighthouse mobile: FCP, LCP, TBT, CLS',
    '1.07 s, 1.55 s, 66 ms, 0.04',
    against(
      `${inSeconds(byLighthouse.fcp)}, ${inSeconds(byLighthouse.lcp)}, ${Math.round(byLighthouse.tbt)} ms, ${Number(byLighthouse.cls.toFixed(3))}: ${scores}`,
      isQuick,
    ),
  ],
  ['warm offline start to usable, CPU 6× slowed', '1.0 s', inTime(oneChick.warmOfflineStartMs, oneChick.workMs, 1000)],
  ['tap on *Done* to *kept*, 4× slowed', '100 ms', against(`${Math.round(median(oneChick.tapToKeptMs))} ms; ${Math.round(median(manyEntries.tapToKeptMs))} ms with 20,000 entries`, median(oneChick.tapToKeptMs) <= 100)],
  ['outlook on 5,000 entries, native', '2 ms', against(`${outlook.toFixed(1)} ms`, outlook <= 2)],
  ['start with 20,000 entries, 4× slowed', '1.5 s', inTime(manyEntries.startMs, manyEntries.workMs, 1500)],
  [
    'memory with 20,000 entries: JS heap in use and WebAssembly memory',
    '64 MiB',
    against(`${((heap + wasm) / MIB).toFixed(0)} MiB (${(heap / MIB).toFixed(1)} and ${(wasm / MIB).toFixed(1)})`, heap + wasm <= 64 * MIB),
  ],
];
const load = `Measured on ${cpus().length} cores with a load of ${loadavg()[1].toFixed(1)}; at more than one a core the times tell of the machine.`;
const beside = table(['beside the usual stack (`tests/bench/twin/`)', 'share of its figure'], await twinRows());
const text = `${load}\n\n${table(['budget', 'at most', 'measured'], budgets)}\n\n${beside}`;
console.log(`\n${text}`);
if (process.env.WRITE !== undefined) {
  writeBetween('budgets', text);
  console.log('\nDEVELOPERS.md holds this table now.');
}
