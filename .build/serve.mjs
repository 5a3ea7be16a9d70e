// A static server without dependencies, for this machine only.
// By hand: node .build/serve.mjs [FOLDER] (port from PORT, else 8080)
import { readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
};
const COMPRESSED = new Set(['.css', '.html', '.js', '.json', '.svg', '.txt', '.wasm', '.webmanifest']);

const isFile = (path) => statSync(path, { throwIfNoEntry: false })?.isFile() === true;

// The file of an address, or null. `base` is the path that the folder is served below.
const fileOf = (folder, base, path) => {
  if (!path.startsWith(base)) {
    return null;
  }
  const inside = decodeURIComponent(path.slice(base.length));
  const file = join(folder, inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside);
  return file.startsWith(resolve(folder) + sep) && isFile(file) ? file : null;
};

// Starts a server on 127.0.0.1; port 0 takes a free one. `folder` may be a function, so that a
// running server can change to another build.
export const serve = ({ folder, port = 0, base = '/' }) => {
  const packed = new Map();
  const pack = (bytes, file) => {
    const key = `${file} ${statSync(file).mtimeMs}`;
    if (!packed.has(key)) {
      packed.set(key, brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }));
    }
    return packed.get(key);
  };
  const server = createServer((request, response) => {
    let file = null;
    try {
      const { pathname } = new URL(request.url, 'http://127.0.0.1');
      file = fileOf(resolve(typeof folder === 'function' ? folder() : folder), base, pathname);
    } catch {
      response.writeHead(400).end();
      return;
    }
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end();
      return;
    }
    if (file === null) {
      response.writeHead(404, { 'content-type': TYPES['.txt'] }).end('not here\n');
      return;
    }
    const kind = extname(file);
    const isPacked = COMPRESSED.has(kind) && /\bbr\b/.test(request.headers['accept-encoding'] ?? '');
    const bytes = readFileSync(file);
    const body = isPacked ? pack(bytes, file) : bytes;
    response.writeHead(200, {
      'content-type': TYPES[kind] ?? 'application/octet-stream',
      'content-length': body.length,
      'cache-control': 'no-cache',
      'x-content-type-options': 'nosniff',
      vary: 'accept-encoding',
      ...(isPacked ? { 'content-encoding': 'br' } : {}),
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  });
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', () => done(server));
  });
};

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2] ?? 'dist';
  const port = Number(process.env.PORT ?? 8080);
  try {
    await serve({ folder, port });
    console.log(`\nPerchlight is at http://127.0.0.1:${port}/   (Ctrl+C ends it)`);
  } catch (error) {
    const why = error.code === 'EADDRINUSE' ? `port ${port} is taken; take another: make serve PORT=8090` : String(error);
    console.error(`The server could not start: ${why}`);
    process.exitCode = 1;
  }
}
