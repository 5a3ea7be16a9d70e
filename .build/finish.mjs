// What is done with a build before it is in its place; Trunk calls it as its post_build hook.
import { fileURLToPath } from 'node:url';
import { joinSheets, packFiles, writeWorker } from './precache.mjs';
import { splitProgram } from './split.mjs';

const { CARGO_TARGET_DIR, TRUNK_PROFILE, TRUNK_STAGING_DIR } = process.env;
const TARGET = CARGO_TARGET_DIR ?? fileURLToPath(new URL('../target', import.meta.url));
splitProgram(TRUNK_STAGING_DIR, TRUNK_PROFILE, TARGET);
joinSheets(TRUNK_STAGING_DIR);
const { version, count } = writeWorker(TRUNK_STAGING_DIR);
packFiles(TRUNK_STAGING_DIR);
console.log(`offline worker: version ${version}, ${count} files`);
