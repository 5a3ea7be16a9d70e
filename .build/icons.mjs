// Draws the PNG icons from public/icons/lamp.svg with Chromium. Needed only when the drawing changes.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const require = createRequire(new URL('../tests/browser/package.json', import.meta.url));
const { chromium } = require('@playwright/test');
const icons = new URL('../public/icons/', import.meta.url);
const lamp = readFileSync(new URL('lamp.svg', icons), 'utf8');
// Systems cut these to a shape of their own: no corners, and for the mask all of it in the inner 80 %.
const fullBleed = lamp.replace(' rx="112"', '');
const maskable = fullBleed.replace('<g id="drawing">', '<g id="drawing" transform="translate(51.2 51.2) scale(0.8)">');

const browser = await chromium.launch({ executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
const draw = async (svg, size, name) => {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body{margin:0;background:transparent}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`);
  writeFileSync(new URL(name, icons), await page.screenshot({ omitBackground: true }));
  await page.close();
  console.log(fileURLToPath(new URL(name, icons)));
};
await draw(lamp, 192, 'icon-192.png');
await draw(lamp, 512, 'icon-512.png');
await draw(maskable, 512, 'maskable-512.png');
await draw(fullBleed, 180, 'apple-touch-icon.png');
await browser.close();
