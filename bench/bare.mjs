// The bare engine: the same browser, the same HTML, the same number of workers and the same reuse of pages, and nothing
// else. It finds the fonts as fonts of the system, so that it needn't even load them: node bench/bare.mjs FOLDER WORKERS
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer';
import { privateCacheFolder } from '../dist/print/cache-folder.js';
import { dejavuFolder } from '../dist/fonts/faces.js';
import { DOCUMENTS_A_PAGE } from '../dist/print/printer.js';
import { shippedBrowser } from '../dist/print/shipped-browser.js';

const [folder, workers] = process.argv.slice(2);
const { executable, libraries } = await shippedBrowser(await privateCacheFolder([]));
const own = mkdtempSync(join(tmpdir(), 'shuntbook-bare-'));
writeFileSync(
  join(own, 'fonts.conf'),
  `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${dejavuFolder()}</dir><cachedir>${own}</cachedir></fontconfig>`,
);
const browser = await puppeteer.launch({
  executablePath: executable,
  headless: 'shell',
  pipe: true,
  args: ['--font-render-hinting=none', '--disable-gpu', '--no-sandbox'],
  env: { ...process.env, LD_LIBRARY_PATH: libraries, FONTCONFIG_FILE: join(own, 'fonts.conf') },
});
const names = readdirSync(folder).sort().values();
await Promise.all(
  Array.from({ length: Number(workers) }, async () => {
    let page;
    let printed = 0;
    for (const name of names) {
      if (printed % DOCUMENTS_A_PAGE === 0) {
        await page?.close();
        page = await browser.newPage();
      }
      printed += 1;
      await page.setContent(readFileSync(join(folder, name), 'utf8'), { waitUntil: 'load' });
      await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
    }
  }),
);
await browser.close();
rmSync(own, { recursive: true, force: true });
