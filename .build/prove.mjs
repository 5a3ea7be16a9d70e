// Makes the table of faults from what the tests told: node .build/prove.mjs FILE
// Fails when a fault was not tried or anything was lost.
import { readFileSync } from 'node:fs';
import { table, writeBetween } from './page.mjs';

// In the order of the table; a fault that nobody told of is missing.
const FAULTS = [
  'browser killed 100 ms after "Kept."',
  'browser killed while it says "Keeping…"',
  'Firefox killed at once after "Kept."',
  'write N of a scripted week fails, each N',
  'stopped after write N, each N',
  'a write torn at each length',
  'a value cut in silence at each length',
  'each bit of each entry and week flipped',
  'a quota of each size',
  'an entry cut and another gone in one copy',
  'an entry changed in its only copy: the others',
  'quota of the first copy reached',
  'quota of both copies reached',
  'first copy blocked at the start',
  'both copies blocked at the start',
  'both copies blocked later, one after the other',
  'IndexedDB missing',
  'IndexedDB never answers: its opening, a reading, a writing',
  'IndexedDB opens too late, once',
  'localStorage cleared',
  'IndexedDB cleared',
  'two tabs writing at the same time',
  'clock set back a day',
  'clock set forward a year',
  'zone changed in mid-plan',
  'the night in autumn when the clocks change',
  'the night in spring when the clocks change',
  'update of the app with an entry half typed',
  'records of a newer version in the first copy',
  'records of a newer version in the second copy',
  'lives of made-up chicks',
];

const lines = readFileSync(process.argv[2], 'utf8').split('\n').filter((line) => line !== '');
const told = new Map(lines.map((line) => JSON.parse(line)).map((row) => [row.fault, row]));
const untried = FAULTS.filter((fault) => !told.has(fault));
const unknown = [...told.keys()].filter((fault) => !FAULTS.includes(fault));
const rows = FAULTS.filter((fault) => told.has(fault)).map((fault) => told.get(fault));
const firstSentence = (text) => text.match(/^.*?[.…!?)](?= |$)/)?.[0] ?? text;
const text = table(
  ['fault', 'trials', 'lost', 'what the screen says'],
  rows.map(({ fault, trials, lost, said }) => [fault, trials, lost, said.startsWith('Keeping') ? said : firstSentence(said)]),
);
console.log(text);
const lost = rows.filter((row) => row.lost > 0);
if (untried.length + unknown.length + lost.length > 0) {
  console.error({ untried, unknown, lost });
  console.error('The table is not written.');
  process.exit(1);
}
writeBetween('faults', `\n${text}\n`.trim());
console.log('\nDEVELOPERS.md holds this table now.');
