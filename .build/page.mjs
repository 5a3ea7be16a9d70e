// Puts a table between its marks in the developers' page.
import { readFileSync, writeFileSync } from 'node:fs';

const PAGE = new URL('../DEVELOPERS.md', import.meta.url);

// A row of a table in Markdown; a bar inside a cell would end it.
export const row = (cells) => `| ${cells.map((cell) => String(cell).replaceAll('|', '\\|')).join(' | ')} |`;

export const table = (heads, rows) => [row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n');

// Replaces what stands between `<!-- name -->` and `<!-- /name -->`.
export const writeBetween = (name, text) => {
  const page = readFileSync(PAGE, 'utf8');
  const [start, end] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
  const [from, to] = [page.indexOf(start), page.indexOf(end)];
  if (from < 0 || to < from) {
    throw new Error(`DEVELOPERS.md has no marks ${start} and ${end}`);
  }
  writeFileSync(PAGE, `${page.slice(0, from)}${start}\n${text}\n${page.slice(to)}`);
};
