import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { findBrowser, launchFlags } from '../tests/browser/find-browser.mjs';

/** Draws the PNG icons from the SVG ones. Run by hand after a change: node .ci/icons.mjs */

const folder = join(import.meta.dirname, '..', 'public', 'icons');
const pictures = [
  { from: 'icon.svg', to: 'icon-192.png', size: 192 },
  { from: 'icon.svg', to: 'icon-512.png', size: 512 },
  { from: 'icon-maskable.svg', to: 'icon-maskable-512.png', size: 512 },
  { from: 'icon-maskable.svg', to: 'icon-maskable-192.png', size: 192 },
  { from: 'shortcut-new-reading.svg', to: 'shortcut-new-reading.png', size: 96 },
  { from: 'shortcut-charts.svg', to: 'shortcut-charts.png', size: 96 },
  // iOS rounds the corners itself and paints see-through ones black
  { from: 'icon-maskable.svg', to: 'apple-touch-icon.png', size: 180, zoom: 1.16 },
];

const profile = mkdtempSync(join(tmpdir(), 'slipfit-icons-'));
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: findBrowser(),
  args: launchFlags,
});
const page = await browser.newPage();
for (const { from, to, size, zoom = 1 } of pictures) {
  const svg = readFileSync(join(folder, from)).toString('base64');
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<style>body{margin:0;overflow:hidden}img{display:block;scale:${zoom}}</style>` +
      `<img width="${size}" height="${size}" src="data:image/svg+xml;base64,${svg}">`,
  );
  await page.screenshot({ path: join(folder, to), omitBackground: true });
}
await browser.close();
rmSync(profile, { recursive: true, force: true });
