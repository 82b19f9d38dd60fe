import { basename, extname, join } from 'node:path';
import { z } from 'zod';
import { ownFolder } from '../output/make-folder.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWhole, type FileToWrite } from '../output/whole-file.js';

/**
 * The catalogue and the settings of the last pack, as their files were: what hangs otherwise than planned is planned anew with them when
 * the work comes back, whatever became of the files, and by whatever version of the program.
 */
export interface CompanyKept {
  /** Paths; undefined: the pack had none. */
  readonly catalogue: string | undefined;
  readonly settings: string | undefined;
  /** The company's logo as a `data:` URL. */
  readonly logo: string | undefined;
}

const FOLDER = 'company';
const INDEX = 'company.json';
/** Bytes; no catalogue is nearly as large. */
const LARGEST = 400_000_000;

/** Names of ours alone: they become parts of paths. */
const indexSchema = z.object({
  version: z.literal(1),
  catalogue: z
    .string()
    .regex(/^catalogue\.[a-z]{3,4}$/)
    .nullable(),
  settings: z.literal('settings.json').nullable(),
  logo: z.string().nullable(),
});

const read = (path: string): Promise<Buffer> => readRegularFile(path, { most: LARGEST, followLinks: true });

/**
 * Keeps the company's files of a run.
 * @param own the folder of our own files inside the output folder
 * @param files paths as they were given; undefined: none
 * @throws Failure where the disk refuses
 */
export async function keepCompany(own: string, files: CompanyKept): Promise<void> {
  const { catalogue, settings, logo } = files;
  const ending = catalogue === undefined ? '' : extname(basename(catalogue)).toLowerCase();
  const name = `catalogue${/^\.[a-z]{3,4}$/.test(ending) ? ending : '.csv'}`;
  const kept: FileToWrite[] = [];
  if (catalogue !== undefined) kept.push({ name, content: await read(catalogue) });
  if (settings !== undefined) kept.push({ name: 'settings.json', content: await read(settings) });
  const index = {
    version: 1,
    catalogue: catalogue === undefined ? null : name,
    settings: settings === undefined ? null : 'settings.json',
    logo: logo ?? null,
  };
  kept.push({ name: INDEX, content: `${JSON.stringify(index)}\n` });
  const folder = await ownFolder(own, FOLDER);
  const isSame = await Promise.all(
    kept.map(async ({ name: file, content }) => {
      const before = await read(join(folder, file)).catch(() => undefined);
      return before?.equals(typeof content === 'string' ? Buffer.from(content) : content) === true;
    }),
  );
  // Most runs change none of them.
  if (isSame.includes(false)) await writeWhole(folder, kept);
}

/**
 * The company's files of the last run.
 * @param own the folder of our own files inside the output folder
 * @returns undefined where they aren't known any more
 */
export async function companyKept(own: string): Promise<CompanyKept | undefined> {
  const folder = join(own, FOLDER);
  try {
    const index = indexSchema.parse(JSON.parse((await read(join(folder, INDEX))).toString('utf8')));
    const pathOf = async (name: string | null): Promise<string | undefined> => {
      if (name === null) return undefined;
      await read(join(folder, name));
      return join(folder, name);
    };
    return {
      catalogue: await pathOf(index.catalogue),
      settings: await pathOf(index.settings),
      logo: index.logo ?? undefined,
    };
  } catch {
    return undefined;
  }
}
