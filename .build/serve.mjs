// A static server without dependencies, for this machine only.
// By hand: node .build/serve.mjs [FOLDER] (port from PORT, else 8080)
import { readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

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
// The endings of what the build has packed beside a file, the smallest first.
const PACKED = { br: '.br', gzip: '.gz' };

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

// How the file is sent: packed as the browser takes it, unless the file was changed since it was packed.
const packingOf = (file, accepted) => {
  const { mtimeMs } = statSync(file);
  const isFresh = (ending) => statSync(file + ending, { throwIfNoEntry: false })?.mtimeMs >= mtimeMs;
  return Object.keys(PACKED).find((name) => new RegExp(`\\b${name}\\b`).test(accepted) && isFresh(PACKED[name])) ?? null;
};

// Starts a server on 127.0.0.1; port 0 takes a free one. `folder` may be a function, so that a
// running server can change to another build.
export const serve = ({ folder, port = 0, base = '/' }) => {
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
    const packing = packingOf(file, request.headers['accept-encoding'] ?? '');
    const body = readFileSync(packing === null ? file : file + PACKED[packing]);
    response.writeHead(200, {
      'content-type': TYPES[kind] ?? 'application/octet-stream',
      'content-length': body.length,
      'cache-control': 'no-cache',
      'x-content-type-options': 'nosniff',
      vary: 'accept-encoding',
      ...(packing === null ? {} : { 'content-encoding': packing }),
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
