import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Workshop } from '../batch/stand-ins.js';

/** A record of a pack, as far as a test changes it. */
interface Recorded {
  folder: string;
  files: { name: string }[];
  previousPlan: string;
  printedPlan: string;
}

/**
 * Changes the record of the packs as somebody who can write to the output folder might.
 * @param shop whose output folder holds the record
 * @returns folders by the line of their record
 */
export async function forge(shop: Workshop, change: (record: Recorded) => void): Promise<string[]> {
  const path = join(shop.out, '.shuntbook', 'packs.ndjson');
  const lines = (await readFile(path, 'utf8')).trim().split('\n');
  const records = lines.map((line) => JSON.parse(line) as Recorded);
  const folders = records.map((record) => record.folder);
  records.forEach(change);
  await writeFile(path, records.map((record) => `${JSON.stringify(record)}\n`).join(''));
  return folders;
}
