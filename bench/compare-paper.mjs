// Whether two folders of packs say the same on paper: node bench/compare-paper.mjs BEFORE AFTER
// Text and number of pages of every PDF; blanks, line breaks and the dates of the files don't count. Make both with the
// same --date. Ends with 0 where all is alike, with 1 where a document differs, with 2 where nothing could be compared.
import { statSync } from 'node:fs';
import { comparePaper } from './paper.mjs';

const folders = process.argv.slice(2);
const isFolder = (path) => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
if (folders.length !== 2 || !folders.every(isFolder)) {
  console.error('Give two folders of packs: node bench/compare-paper.mjs BEFORE AFTER');
  process.exit(2);
}
const { documents, pages, differing } = await comparePaper(...folders);
for (const { name, differences } of differing) {
  console.log(name);
  for (const difference of differences) console.log(`  ${difference}`);
}
console.log(`${documents} documents, ${pages} pages compared; ${differing.length} documents differ`);
if (documents === 0) console.error('There is no PDF in either folder.');
process.exitCode = documents === 0 ? 2 : differing.length > 0 ? 1 : 0;
