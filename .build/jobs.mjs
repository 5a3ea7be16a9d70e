// Makes the table of the counted jobs from what the tests told: node .build/jobs.mjs FILE [1]
// With 1 it is written into DEVELOPERS.md.
import { readFileSync } from 'node:fs';
import { table, writeBetween } from './page.mjs';

const [file, isWritten] = process.argv.slice(2);
const lines = readFileSync(file, 'utf8').split('\n').filter((line) => line !== '');
// A test that was tried again told twice.
const jobs = new Map(lines.map((line) => JSON.parse(line)).map((job) => [job.job, job]));
if (jobs.size === 0) {
  console.error('No job was counted; the table is not written.');
  process.exit(1);
}
const rows = [...jobs.values()].sort((one, other) => other.most - one.most || one.job.localeCompare(other.job));
const text = table(
  ['job', 'taps, at most', 'taps', 'characters', 'screens', 'scrolls'],
  rows.map(({ job, most, taps, characters, screens, scrolls }) => [job, most, taps, characters, screens, scrolls]),
);
console.log(text);
if (isWritten) {
  writeBetween('jobs', text);
  console.log('\nDEVELOPERS.md holds this table now.');
}
