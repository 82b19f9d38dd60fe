import { existsSync, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A package of package-lock.json, as far as it matters here. */
interface LockEntry {
  readonly version?: string;
  readonly license?: string;
  readonly resolved?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly hasInstallScript?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
}

/** A package that an installed shuntbook holds. */
export interface RunTimePackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Below the project's folder. */
  readonly path: string;
  /** Named by package.json itself. */
  readonly direct: boolean;
  /** Names of the packages that ask for it; empty for one that only package.json names. */
  readonly neededBy: readonly string[];
  /** True where npm runs a script of the package when it is installed. */
  readonly hasInstallScript: boolean;
}

const MODULES = 'node_modules/';

/** The packages of package-lock.json by path; the path of the project itself is empty. */
export function lockEntries(): ReadonlyMap<string, LockEntry> {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    packages: Record<string, LockEntry>;
  };
  return new Map(Object.entries(lock.packages));
}

/**
 * What an installed shuntbook is made of beside itself, by the lock file.
 * @returns packages in the order of their names, then versions
 */
export function runTimePackages(): RunTimePackage[] {
  const entries = lockEntries();
  const askedBy = new Map<string, Set<string>>();
  const direct = new Set<string>();
  for (const [path, entry] of entries) {
    if (entry.dev === true) continue;
    const asked = { ...entry.dependencies, ...entry.optionalDependencies, ...entry.peerDependencies };
    for (const name of Object.keys(asked)) {
      const found = resolvedFrom(path, name, entries);
      if (found === undefined) continue;
      if (path === '') direct.add(found);
      else askedBy.set(found, (askedBy.get(found) ?? new Set()).add(nameOf(path)));
    }
  }
  return [...entries]
    .filter(([path, entry]) => path !== '' && entry.dev !== true)
    .map(([path, entry]) => ({
      name: nameOf(path),
      version: entry.version ?? '',
      licence: entry.license ?? '',
      path,
      direct: direct.has(path),
      neededBy: [...(askedBy.get(path) ?? [])].toSorted(),
      hasInstallScript: entry.hasInstallScript === true,
    }))
    .toSorted((a, b) => compare(a.name, b.name) || compare(a.version, b.version) || compare(a.path, b.path));
}

/**
 * The bytes of an installed package, without the packages inside it.
 * @throws Error where it isn't installed
 */
export function sizeOf(path: string): number {
  if (!existsSync(path)) throw new Error(`${path} isn’t installed: run npm ci`);
  let bytes = 0;
  for (const entry of readdirSync(path, { withFileTypes: true })) {
    if (entry.name === 'node_modules') continue;
    const inner = join(path, entry.name);
    bytes += entry.isDirectory() ? sizeOf(inner) : lstatSync(inner).size;
  }
  return bytes;
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf(MODULES) + MODULES.length);

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Where Node finds a package that another one asks for: inside that one, else in the folders around it. */
function resolvedFrom(
  asking: string,
  name: string,
  entries: ReadonlyMap<string, unknown>,
): string | undefined {
  for (let at = asking; ; at = at.slice(0, Math.max(0, at.lastIndexOf(`/${MODULES}`)))) {
    const path = at === '' ? `${MODULES}${name}` : `${at}/${MODULES}${name}`;
    if (entries.has(path)) return path;
    if (at === '') return undefined;
  }
}
