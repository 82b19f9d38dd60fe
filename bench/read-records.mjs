// Reads and parses the records of an output folder, one after another, and nothing else: what the register is measured against.
// node bench/read-records.mjs OUT
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const [out] = process.argv.slice(2);
let records = 0;
for (const entry of readdirSync(out, { withFileTypes: true })) {
  if (!entry.isDirectory() || entry.name.startsWith('.')) continue;
  JSON.parse(readFileSync(join(out, entry.name, 'record.json'), 'utf8'));
  records += 1;
}
console.log(records);
