import { sizeOf, type RunTimePackage } from './run-time-packages.js';

/** Why shuntbook itself asks for a package. */
const WHY: Readonly<Record<string, string>> = {
  '@fontsource/atkinson-hyperlegible-next': 'the font of what owners read, and of labels',
  '@fontsource/ibm-plex-sans-condensed': 'the font of tables, drawings and notes',
  '@sparticuz/chromium':
    'the browser that prints on Linux x64, inside the package: nothing is downloaded, and every machine prints the same page',
  'csv-parse': 'reads lists, libraries and catalogues that were decoded before',
  'csv-stringify': 'writes the tables of a batch',
  'dejavu-fonts-ttf': 'the font of signs, and of scripts that the other two lack',
  '@cantoo/pdf-lib': 'appends data sheets to the appendix of permit sheets',
  handlebars: 'fills the templates in',
  'ical.js': 'writes the calendar of checks that are due',
  'puppeteer-core': 'drives the browser; unlike the whole package of that project, it downloads none',
  sax: 'reads the parts of workbooks piece by piece, and no entities of their own',
  'tar-fs':
    'unpacks the libraries of the shipped browser, and refuses paths that lead out of the browser’s folder',
  yargs: 'reads the command line',
  zod: 'checks settings, column maps, plans and what goes into templates',
};

/**
 * docs/dependencies.md: what an install brings, why, how big it is, and under which licence.
 * @param packages of the lock file
 * @returns the page
 * @throws Error where a package that shuntbook asks for has no reason, or a reason no package, or one isn't installed
 */
export function dependenciesPage(packages: readonly RunTimePackage[]): string {
  const direct = packages.filter((p) => p.direct);
  const others = packages.filter((p) => !p.direct);
  const stale = Object.keys(WHY).filter((name) => !direct.some((p) => p.name === name));
  if (stale.length > 0) throw new Error(`no dependency, yet explained: ${stale.join(', ')}`);
  const total = packages.reduce((sum, p) => sum + sizeOf(p.path), 0);
  return [
    '# Dependencies',
    '',
    'Written by `npm run docs:supply` from `package-lock.json`; `npm run check` fails while this page is stale.',
    'Sizes are those of the installed files. No package runs a script of its own when it is installed.',
    '',
    `An installed shuntbook holds ${packages.length} packages of others, ${size(total)} together.`,
    '',
    '## What shuntbook asks for',
    '',
    table(['package', 'version', 'why', 'size', 'licence'], direct, (p) => [
      p.name,
      p.version,
      reason(p),
      size(sizeOf(p.path)),
      p.licence,
    ]),
    '',
    'Each is named in `package.json` by its exact version: pages, drawings and lists then come out as they were tested.',
    '',
    '## What these bring along',
    '',
    table(['package', 'version', 'asked for by', 'size', 'licence'], others, (p) => [
      p.name,
      p.version,
      p.neededBy.join(', '),
      size(sizeOf(p.path)),
      p.licence,
    ]),
    '',
    'The notices of fonts and browser are in `third-party-notices.md`; every other package brings its licence in its own folder',
    'or names it in its `package.json`. `npm run sbom` writes the same list for machines (CycloneDX; `-- spdx` for SPDX).',
    '',
  ].join('\n');
}

function reason(p: RunTimePackage): string {
  const why = WHY[p.name];
  if (why === undefined) throw new Error(`${p.name} is a dependency, and nothing says why`);
  return why;
}

function table(
  heading: readonly string[],
  packages: readonly RunTimePackage[],
  cells: (p: RunTimePackage) => readonly string[],
): string {
  const line = (row: readonly string[]): string => `| ${row.join(' | ')} |`;
  return [line(heading), line(heading.map(() => '---')), ...packages.map((p) => line(cells(p)))].join('\n');
}

/** Bytes as people say them; a kB is 1000 bytes. */
const size = (bytes: number): string =>
  bytes >= 1e6 ? `${(bytes / 1e6).toFixed(1)} MB` : `${Math.max(1, Math.round(bytes / 1e3))} kB`;
