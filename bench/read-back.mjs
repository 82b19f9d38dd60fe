// Reads the PDFs of a folder of packs back: node bench/read-back.mjs out/demo
// Each one must open, say its title and language, be tagged, and hold text that names each protector of its plan.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFParse } from './pdf-readers.mjs';
import { DOCUMENT_KINDS } from '../dist/index.js';

const EXPECTED = DOCUMENT_KINDS.map((kind) => `${kind}.pdf`);
const out = process.argv[2] ?? 'out/demo';
const faults = [];
let files = 0;
let pages = 0;

for (const entry of readdirSync(out, { withFileTypes: true })) {
  if (!entry.isDirectory() || entry.name.startsWith('.')) continue;
  const folder = join(out, entry.name);
  const plan = JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'));
  // A draft has no labels.
  const expected = EXPECTED.filter((name) => plan.submittable || name !== 'labels.pdf');
  for (const name of expected) {
    const path = join(folder, name);
    const fault = (what) => faults.push(`${path}: ${what}`);
    let bytes;
    try {
      bytes = readFileSync(path);
    } catch {
      fault("isn't there");
      continue;
    }
    const raw = bytes.toString('latin1');
    if (!raw.startsWith('%PDF-')) fault('is no PDF');
    const parser = new PDFParse({ data: new Uint8Array(bytes) });
    try {
      const [info, text] = [await parser.getInfo(), await parser.getText()];
      files += 1;
      pages += text.total;
      const words = text.text.normalize('NFKC');
      if (!info.info?.Title) fault('has no title');
      if (!info.info?.Language) fault('has no language');
      if (!info.info?.IsLinearized && info.info?.IsEncrypted) fault('is encrypted');
      if (words.trim().length < 50 && plan.protectors.length > 0) fault('holds no text');
      if (name === 'closeout-pack.pdf') {
        if (!(info.outline?.length > 0)) fault('has no bookmarks');
        for (const p of plan.protectors) if (!words.includes(p.tag)) fault(`doesn't name ${p.tag}`);
        if (!plan.submittable && !/draft/i.test(words)) fault("doesn't say that it is a draft");
      }
    } catch (error) {
      fault(`can't be read: ${error.message}`);
    } finally {
      await parser.destroy();
    }
  }
}

for (const fault of faults) console.error(fault);
console.log(`${files} PDFs with ${pages} pages read back, ${faults.length} faults`);
process.exit(faults.length > 0 || files === 0 ? 1 : 0);
