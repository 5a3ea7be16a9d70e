// Builds the twin into target/twin: node tests/bench/twin/build.mjs SHEET, the app's own style sheet.
import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { generateSW } from 'workbox-build';
import { packFiles } from '../../../.build/precache.mjs';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const OUT = fileURLToPath(new URL('../../../target/twin/', import.meta.url));

rmSync(OUT, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });
await build({
  entryPoints: [join(HERE, 'main.jsx')],
  outfile: join(OUT, 'main.js'),
  bundle: true,
  minify: true,
  format: 'esm',
  target: 'es2022',
  jsx: 'automatic',
  define: { 'process.env.NODE_ENV': '"production"' },
  logLevel: 'error',
});
copyFileSync(join(HERE, 'index.html'), join(OUT, 'index.html'));
copyFileSync(process.argv[2], join(OUT, 'perchlight.css'));
await generateSW({
  globDirectory: OUT,
  globPatterns: ['**/*.{html,js,css}'],
  swDest: join(OUT, 'sw.js'),
  inlineWorkboxRuntime: true,
  sourcemap: false,
  mode: 'production',
  navigateFallback: '/index.html',
  skipWaiting: true,
  clientsClaim: true,
});
// As the app's own files are, so that both are sent alike.
packFiles(OUT);
