import type { Catalogue } from '../model/catalogue.js';
import type { JobList, LibraryHeading, MissingModel } from '../model/list.js';
import type { OpenItem } from '../model/open-item.js';
import type { Settings } from '../model/settings.js';
import { readCatalogue } from '../read/company/catalogue.js';
import { readColumnMap } from '../read/table/column-map.js';
import { companyPaths, findCompanyFiles, type CompanyFiles } from '../read/file/find.js';
import { readLibrary } from '../read/company/library.js';
import { readLists, type ListCount } from '../read/list/lists.js';
import { readSettings } from '../read/company/settings.js';
import type { BatchOptions } from './batch-options.js';
import { logoPath, readLogo } from './logo.js';

/** Everything that a batch reads before it plans. */
export interface BatchInputs {
  /** Paths of the company's files; undefined: none. */
  readonly files: CompanyFiles;
  readonly lists: ListCount;
  /** In natural order of their ids. */
  readonly jobs: readonly JobList[];
  readonly settings: Settings;
  readonly catalogue: Catalogue | undefined;
  /** The company's logo as a `data:` URL. */
  readonly logo: string | undefined;
  /** Items of no job. */
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
  readonly missingModels: readonly MissingModel[];
  /** The headings of the equipment library. */
  readonly libraryHeadings: readonly LibraryHeading[];
  /** False where settings or column map can't be read: without them nothing is what the company wants. */
  readonly usable: boolean;
}

/**
 * Reads lists, library, catalogue, settings, column map and logo.
 * @param options of the batch
 * @param signal ends the reading
 * @returns never throws for what stands in a file
 * @throws the reason of the signal that ended it
 */
export async function readInputs(options: BatchOptions, signal?: AbortSignal): Promise<BatchInputs> {
  const { lists } = options;
  const files = await findCompanyFiles(lists, options);
  const settings = await readSettings(files.settings);
  const { company } = settings.settings;
  const map = files.columns === undefined ? undefined : await readColumnMap(files.columns);
  const library =
    files.library === undefined ? undefined : await readLibrary(files.library, settings.settings, signal);
  const catalogue = files.catalogue === undefined ? undefined : await readCatalogue(files.catalogue, signal);
  const libraryUsed = library?.unreadable.length === 0 ? library.library : undefined;
  const catalogueUsed = catalogue?.unreadable.length === 0 ? catalogue.catalogue : undefined;
  const [read, logo] = await Promise.all([
    readLists({
      lists,
      settings: settings.settings,
      library: libraryUsed,
      columns: map?.map ?? undefined,
      dialect: options.dialect,
      jobFacts: options.jobFacts,
      answers: options.answers,
      equipmentFacts: options.equipmentFacts,
      stdinJob: options.job,
      exclude: [...companyPaths(files), logoPath(company.logo, files.settings)].filter((path) => path !== ''),
      stdin: options.stdin,
      signal,
    }),
    readLogo(company.logo, files.settings),
  ]);
  const withoutWhichNothing = [...settings.unreadable, ...(map?.unreadable ?? [])];
  return {
    files,
    lists: read.lists,
    jobs: read.jobs,
    settings: settings.settings,
    catalogue: catalogueUsed,
    logo: logo.dataUrl,
    items: [
      ...settings.items,
      ...(library?.items ?? []),
      ...(catalogueUsed?.items ?? []),
      ...logo.items,
      ...read.items,
    ],
    unreadable: [
      ...withoutWhichNothing,
      ...(library?.unreadable ?? []),
      ...(catalogue?.unreadable ?? []),
      ...read.unreadable,
    ],
    missingModels: read.missingModels,
    libraryHeadings: libraryUsed?.headings ?? [],
    usable: withoutWhichNothing.length === 0,
  };
}
