// Bytes of each piece of the program by crate and layer, from its code and its names: node .build/sizes.mjs [MOST]
// With MOST, so many of the largest functions as well. It needs a release build.
// Names come in the form that the compiler gives them; rustfilt gives them back the form they have in the source.
// The sections are those of the WebAssembly core specification, 5.5; names: appendix, custom sections, name section.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { shrink, split } from './split.mjs';

const CUSTOM = 0;
const IMPORT = 2;
const CODE = 10;
const DATA = 11;
const FUNCTION_NAMES = 1;
const FUNCTION = 0;

const LAYERS = [
  ['perchlight::domain', /^perchlight::(domain|checksum)/],
  ['perchlight::store', /^perchlight::store/],
  ['perchlight::share', /^perchlight::share/],
  ['perchlight::words', /^perchlight::words/],
  ['perchlight::ui', /^perchlight/],
  ['leptos and its family', /^(leptos|tachys|reactive_graph|reactive_stores|any_spawner|hydration_context|server_fn|or_poisoned|throw_error|either_of|oco_ref|slotmap|send_wrapper|futures|guardian|const_str|next_tuple|async_|rustc_hash|indexmap|hashbrown)/],
  ['plotters', /^plotters/],
  ['qrcodegen', /^qrcodegen/],
  ['chrono', /^chrono/],
  ['base64, percent-encoding', /^(base64|percent_encoding)/],
  ['browser bindings', /^(js_sys|web_sys|wasm_bindgen|gloo|console_error|__wbg|__wbindgen|__externref|wasm_streams|intounderlying)/],
  ['core, alloc, std, allocator', /^(core|alloc|std|dlmalloc|compiler_builtins|memcpy|memmove|memset|memcmp|__rust|__rdl|rust_|_|str|char|u8|u16|u32|u64|usize|i32|i64|f64|bool)/],
];

class Reader {
  constructor(bytes) {
    this.bytes = bytes;
    this.at = 0;
  }

  byte() {
    this.at += 1;
    return this.bytes[this.at - 1];
  }

  // An unsigned number in LEB128 (5.2.2).
  number() {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = this.byte();
      value += (byte & 0x7f) * 2 ** shift;
      if (byte < 0x80) {
        return value;
      }
    }
  }

  take(length) {
    this.at += length;
    return this.bytes.subarray(this.at - length, this.at);
  }

  name() {
    return new TextDecoder().decode(this.take(this.number()));
  }

  get isAtEnd() {
    return this.at >= this.bytes.length;
  }
}

const skipLimits = (reader) => {
  const flags = reader.byte();
  reader.number();
  if (flags & 1) {
    reader.number();
  }
};

const importedFunctions = (reader) => {
  let functions = 0;
  for (let left = reader.number(); left > 0; left -= 1) {
    reader.name();
    reader.name();
    const kind = reader.byte();
    if (kind === FUNCTION) {
      functions += 1;
      reader.number();
    } else if (kind === 1) {
      reader.byte();
      skipLimits(reader);
    } else if (kind === 2) {
      skipLimits(reader);
    } else {
      reader.take(2);
    }
  }
  return functions;
};

const functionNames = (reader) => {
  const names = new Map();
  while (!reader.isAtEnd) {
    const kind = reader.byte();
    const part = new Reader(reader.take(reader.number()));
    if (kind === FUNCTION_NAMES) {
      for (let left = part.number(); left > 0; left -= 1) {
        names.set(part.number(), part.name());
      }
    }
  }
  const source = execFileSync('rustfilt', { input: [...names.values()].join('\n'), encoding: 'utf8', maxBuffer: 1 << 26 }).split('\n');
  return new Map([...names.keys()].map((place, index) => [place, source[index]]));
};

// The path that a demangled name begins with, without brackets and words before it.
const pathOf = (name) => name.replace(/^([<&([*\s]|mut |const |dyn |impl |[A-Z][A-Za-z]{0,2} as )+/, '');

const layerOf = (name) => LAYERS.find(([, pattern]) => pattern.test(pathOf(name)))?.[0] ?? 'others';

const tell = (path, most) => {
  const file = new Reader(readFileSync(path));
  file.take(8);
  let imports = 0;
  let data = 0;
  let bodies = [];
  let names = new Map();
  while (!file.isAtEnd) {
    const kind = file.byte();
    const section = new Reader(file.take(file.number()));
    if (kind === IMPORT) {
      imports = importedFunctions(section);
    } else if (kind === DATA) {
      data = section.bytes.length;
    } else if (kind === CODE) {
      for (let left = section.number(); left > 0; left -= 1) {
        const start = section.at;
        section.take(section.number());
        bodies.push(section.at - start);
      }
    } else if (kind === CUSTOM && section.name() === 'name') {
      names = functionNames(new Reader(section.bytes.subarray(section.at)));
    }
  }
  if (names.size === 0) {
    throw new Error(`${path} holds no names`);
  }
  const functions = bodies.map((bytes, index) => ({ bytes, name: names.get(imports + index) ?? '' }));
  const sums = new Map();
  for (const { bytes, name } of functions) {
    const layer = layerOf(name);
    const [sum, count] = sums.get(layer) ?? [0, 0];
    sums.set(layer, [sum + bytes, count + 1]);
  }
  sums.set('data: texts, tables', [data, 0]);
  const total = [...sums.values()].reduce((all, [bytes]) => all + bytes, 0);
  for (const [layer, [bytes, count]] of [...sums].sort(([, [a]], [, [b]]) => b - a)) {
    const share = ((bytes / total) * 100).toFixed(1);
    console.log(`${layer.padEnd(30)} ${String(bytes).padStart(8)} bytes ${share.padStart(5)} %  ${String(count || '').padStart(5)}${count ? ' functions' : ''}`);
  }
  console.log(`${'code and data'.padEnd(30)} ${String(total).padStart(8)} bytes before compression`);
  for (const { bytes, name } of functions.sort((a, b) => b.bytes - a.bytes).slice(0, most)) {
    console.log(`${String(bytes).padStart(8)}  ${name}`);
  }
};

const TARGET = process.env.CARGO_TARGET_DIR ?? 'target';
const FOLDER = join(TARGET, 'pieces/named');
const most = Number(process.argv[2] ?? 0);
const pieces = split(join(TARGET, 'wasm32-unknown-unknown/release/perchlight.wasm'), FOLDER, '--keep-debug');
for (const piece of pieces.filter((name) => name.endsWith('.wasm'))) {
  const path = join(FOLDER, piece);
  // The build's own last step, with the names kept.
  shrink(path, '-g');
  console.log(`\n${piece}`);
  tell(path, most);
}
