// Makes the table of faults from what the tests told: node .build/prove.mjs FILE
// Fails when a fault was not tried or anything was lost.
import { readFileSync } from 'node:fs';
import { table, writeBetween } from './page.mjs';

const ENGINES = ['native', 'Chromium', 'Firefox', 'WebKitGTK'];
const NATIVE = ['native'];
const CHROMIUM = ['Chromium'];
// In automation WebKitGTK keeps its storage in memory, so that it is killed without (tests/browser/engines.mjs).
const BROWSERS = ['Chromium', 'Firefox', 'WebKitGTK'];
const KILLED_LATER = ['Chromium', 'Firefox'];

// In the order of the table, each with where it must be tried; what nobody told of is missing.
const FAULTS = {
  'browser killed at once after "Kept."': BROWSERS,
  'browser killed 100 ms after "Kept."': KILLED_LATER,
  'browser killed while it says "Keeping…"': KILLED_LATER,
  'write N of a scripted week fails, each N': NATIVE,
  'stopped after write N, each N': NATIVE,
  'a write torn at each length': NATIVE,
  'a value cut in silence at each length': NATIVE,
  'each bit of each entry and week flipped': NATIVE,
  'a quota of each size': NATIVE,
  'an entry cut and another gone in one copy': CHROMIUM,
  'an entry changed in its only copy: the others': CHROMIUM,
  'quota of the first copy reached': BROWSERS,
  'quota of both copies reached': BROWSERS,
  'first copy blocked at the start': BROWSERS,
  'both copies blocked at the start': BROWSERS,
  'both copies blocked later, one after the other': CHROMIUM,
  'IndexedDB missing': BROWSERS,
  'IndexedDB never answers: its opening, a reading, a writing': BROWSERS,
  'IndexedDB opens too late, once': CHROMIUM,
  'localStorage cleared': BROWSERS,
  'IndexedDB cleared': BROWSERS,
  'two tabs writing at the same time': CHROMIUM,
  'clock set back a day': CHROMIUM,
  'clock set forward a year': CHROMIUM,
  'zone changed in mid-plan': CHROMIUM,
  'the night in autumn when the clocks change': CHROMIUM,
  'the night in spring when the clocks change': CHROMIUM,
  'update of the app with an entry half typed': BROWSERS,
  'records of a newer version in the first copy': CHROMIUM,
  'records of a newer version in the second copy': CHROMIUM,
  'lives of made-up chicks': NATIVE,
};

const lines = readFileSync(process.argv[2], 'utf8').split('\n').filter((line) => line !== '');
const cells = lines.map((line) => JSON.parse(line));
const cellOf = (fault, engine) => cells.findLast((cell) => cell.fault === fault && cell.engine === engine);
const wanted = Object.entries(FAULTS).flatMap(([fault, engines]) => engines.map((engine) => ({ fault, engine })));
const untried = wanted.filter(({ fault, engine }) => cellOf(fault, engine) === undefined);
const unknown = cells.filter(({ fault, engine }) => FAULTS[fault]?.includes(engine) !== true);
const firstSentence = (text) => text.match(/^.*?[.…!?)](?= |$)/)?.[0] ?? text;
const rowOf = (fault) => {
  const told = ENGINES.map((engine) => cellOf(fault, engine));
  const known = told.filter((cell) => cell !== undefined);
  const [{ said } = { said: '' }] = known;
  const notes = known.filter(({ note }) => note !== undefined).map(({ engine, note }) => `${engine}: ${note}`);
  const lost = known.reduce((sum, cell) => sum + cell.lost, 0);
  return [fault, ...told.map((cell) => cell?.trials ?? '–'), lost, firstSentence(said) + (notes.length > 0 ? ` (${notes.join('; ')})` : '')];
};
const text = table(['fault', ...ENGINES, 'lost', 'what the screen says'], Object.keys(FAULTS).map(rowOf));
console.log(text);
const lost = cells.filter((cell) => cell.lost > 0);
if (untried.length + unknown.length + lost.length > 0) {
  console.error({ untried, unknown, lost });
  console.error('The table is not written.');
  process.exit(1);
}
writeBetween('faults', `\n${text}\n`.trim());
console.log('\nDEVELOPERS.md holds this table now.');
