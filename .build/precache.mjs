// The last steps of a build: joining the style sheets to one file, the offline worker's list, and packed files.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';

const TEMPLATE = new URL('../public/sw.js', import.meta.url);
const WORKER = 'sw.js';
// Beside a file, for hosts that send packed files as they are; a browser never asks for them by name.
const PACKED = { '.br': brotliCompressSync, '.gz': gzipSync };
const SHRINKS = ['.css', '.html', '.js', '.svg', '.wasm', '.webmanifest'];

// What the app itself never asks for: its worker, packed files, and pictures that are shown before installing.
const isBeside = (path) => path === WORKER || extname(path) in PACKED || /^(\.|screenshots\/)/.test(path);

const sha256 = (bytes, form) => createHash('sha256').update(bytes).digest(form);

const filesBelow = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : [path];
  });

// One request instead of one for each sheet, in the order of the page. Does nothing the second time.
export const joinSheets = (folder) => {
  const page = join(folder, 'index.html');
  const html = readFileSync(page, 'utf8');
  const links = [...html.matchAll(/\s*<link\b[^>]*\brel="?stylesheet"?[^>]*>/g)].map(([tag]) => ({
    tag,
    path: join(folder, tag.match(/\bhref="?([^"\s>]+)"?/)[1]),
  }));
  if (links.length < 2) {
    return;
  }
  const css = links.map(({ path }) => readFileSync(path, 'utf8').trim()).join('\n');
  const name = `perchlight-${sha256(css, 'hex').slice(0, 16)}.css`;
  writeFileSync(join(folder, name), css);
  const [first, ...others] = links;
  const joined = others.reduce((text, { tag }) => text.replace(tag, ''), html);
  writeFileSync(page, joined.replace(first.tag, `\n    <link rel="stylesheet" href="./${name}">`));
  links.forEach(({ path }) => rmSync(path));
};

// Writes sw.js with every file of the folder and a version made from that list.
export const writeWorker = (folder) => {
  const files = filesBelow(folder)
    .map((path) => relative(folder, path).split(sep).join('/'))
    .filter((path) => !isBeside(path))
    .sort()
    .map((path) => {
      const integrity = `sha256-${sha256(readFileSync(join(folder, path)), 'base64')}`;
      // The page under the address that people open; some hosts redirect the file's own name.
      return [path === 'index.html' ? './' : path, integrity];
    });
  const version = sha256(JSON.stringify(files), 'hex').slice(0, 16);
  const template = readFileSync(TEMPLATE, 'utf8');
  const rows = files.map((row) => `\n  ${JSON.stringify(row)},`).join('');
  const worker = template.replace('__VERSION__', () => version).replace('/* __FILES__ */', () => `${rows}\n`);
  if (worker === template || worker.includes('__VERSION__') || worker.includes('__FILES__')) {
    throw new Error('public/sw.js has lost its places for the version and the list');
  }
  writeFileSync(join(folder, WORKER), worker);
  return { version, count: files.length };
};

// Packs every file that shrinks, beside itself.
export const packFiles = (folder) => {
  for (const path of filesBelow(folder).filter((path) => SHRINKS.includes(extname(path)))) {
    const bytes = readFileSync(path);
    Object.entries(PACKED).forEach(([ending, pack]) => writeFileSync(path + ending, pack(bytes)));
  }
};
