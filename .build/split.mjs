// Part of a build: splits the program where src/ui/pieces.rs says, makes each piece small, and puts the pieces in the
// place of the one file that Trunk has written.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const NAME = 'perchlight';
// What the compiler writes for WebAssembly today; wasm-opt refuses what it is not told of.
const FEATURES = ['bulk-memory', 'nontrapping-float-to-int', 'sign-ext', 'mutable-globals', 'reference-types', 'multivalue'];
// What Trunk has written.
const WHOLE = /^perchlight-[0-9a-f]+(\.js|_bg\.wasm)$/;

// Whether a file of a build is fetched only behind the first screen.
export const isLater = (file) => file.endsWith('.wasm') && !file.endsWith('-first.wasm');

const run = (tool, ...args) => execFileSync(tool, args, { stdio: ['ignore', 'ignore', 'inherit'] });

// The pieces of PROGRAM and the scripts that load them, in FOLDER; with the names of their functions when they are wanted.
export const split = (program, folder, ...options) => {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  run('wasm-split-cli', program, folder, '--out-name', NAME);
  run('wasm-bindgen', join(folder, `${NAME}.wasm`), '--target', 'web', '--no-typescript', '--keep-lld-exports', '--out-dir', folder, ...options);
  renameSync(join(folder, `${NAME}_bg.wasm`), join(folder, `${NAME}.wasm`));
  return readdirSync(folder).filter((name) => /\.(js|wasm)$/.test(name));
};

export const shrink = (file, ...options) =>
  run('wasm-opt', '-Oz', ...options, ...FEATURES.map((feature) => `--enable-${feature}`), file, '-o', file);

// Every name carries the mark of all pieces together, since they fit only one another.
const namesOf = (folder, pieces) => {
  const hash = createHash('sha256');
  pieces.forEach((piece) => hash.update(readFileSync(join(folder, piece))));
  const mark = `${NAME}-${hash.digest('hex').slice(0, 16)}`;
  const names = pieces.map((piece) => [piece, `${mark}-${piece.replace(/^split_/, '').replaceAll('_', '-')}`]);
  return {
    ...Object.fromEntries(names),
    '__wasm_split.js': `${mark}-loader.js`,
    [`${NAME}.js`]: `${mark}.js`,
    [`${NAME}.wasm`]: `${mark}-first.wasm`,
  };
};

// In a script only what it loads: the same names stand in the program as names of imports.
const relinked = (text, names) =>
  Object.entries(names).reduce(
    (all, [from, to]) => all.replaceAll(`from "./${from}"`, `from "./${to}"`).replaceAll(`URL("./${from}"`, `URL("./${to}"`),
    text,
  );

// The page loads the first piece, and knows the pieces of what is due.
const relinkedPage = (html, whole, names) => {
  const { 'split_rest.wasm': rest, ...others } = names;
  const due = Object.values(others).filter(isLater).map((name) => `./${name}`);
  const loader = `<link rel="modulepreload" href="./${names['__wasm_split.js']}">`;
  const renamed = whole.reduce((text, name) => text.replaceAll(name, names[name.endsWith('.js') ? `${NAME}.js` : `${NAME}.wasm`]), html);
  const linked = renamed.replace('</head>', `${loader}</head>`).replace(' data-module=', ` data-due="${due.join(' ')}" data-module=`);
  if (!linked.includes(loader) || !linked.includes(' data-due="./')) {
    throw new Error('src/index.html or Trunk.toml has lost its places for the pieces');
  }
  return linked;
};

// Replaces the whole program in the folder STAGING, built as PROFILE below the folder TARGET, by its pieces.
export const splitProgram = (staging, profile, target) => {
  const folder = join(target, 'pieces', profile);
  const pieces = split(join(target, 'wasm32-unknown-unknown', profile, `${NAME}.wasm`), folder);
  if (profile === 'release') {
    pieces.filter((name) => name.endsWith('.wasm')).forEach((name) => shrink(join(folder, name), '--strip-debug', '--strip-producers'));
  }
  const whole = readdirSync(staging).filter((name) => WHOLE.test(name));
  const names = namesOf(folder, pieces);
  pieces.forEach((piece) => {
    const bytes = readFileSync(join(folder, piece));
    writeFileSync(join(staging, names[piece]), piece.endsWith('.js') ? relinked(bytes.toString(), names) : bytes);
  });
  const page = join(staging, 'index.html');
  writeFileSync(page, relinkedPage(readFileSync(page, 'utf8'), whole, names));
  whole.forEach((name) => rmSync(join(staging, name)));
};
