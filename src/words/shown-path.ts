import { basename, isAbsolute, relative, resolve, sep } from 'node:path';

/**
 * A file as plans, records, documents and CSVs name it, which leave this machine: as it was given where that is relative
 * and stays below the working folder, else the file's name.
 * @param path as it was given; `-` is standard input
 */
export function shownPath(path: string): string {
  if (path === '' || path === '-') return path;
  const from = relative('.', path);
  const isBelow = !isAbsolute(path) && from !== '..' && !from.startsWith(`..${sep}`);
  return isBelow ? path : basename(resolve(path));
}

/**
 * Several files as they are named: two of one name, which lie in two folders, are told apart.
 * @param paths as they were given
 * @returns the name of each, in their order; no two are equal where no two paths are
 */
export function shownPaths(paths: readonly string[]): string[] {
  const taken = new Set<string>();
  return paths.map((path) => {
    const name = shownPath(path);
    let told = name;
    for (let n = 2; taken.has(told); n += 1) told = `${name} (${n})`;
    taken.add(told);
    return told;
  });
}

/** A path of this machine within a text, of the kinds that systems put into their own messages. */
const MACHINE_PATH = /(?<![\w.:/\\~<-])(?:file:\/\/\/?|~)?(?:[A-Za-z]:)?(?:[/\\][^\s/\\:;,'"`()<>]+)+[/\\]?/g;

/**
 * A text in which no path of this machine stands: of each only its last part is left.
 * @param text what a system or a library said
 * @param folders of which is known that they may stand there, blanks and all
 */
export function withoutPaths(text: string, folders: readonly string[] = []): string {
  const known = folders
    .map((folder) => resolve(folder))
    .filter((folder) => basename(folder) !== '')
    .sort((a, b) => b.length - a.length)
    .reduce((left, folder) => left.replaceAll(folder, basename(folder)), text);
  return known.replace(MACHINE_PATH, (path) => (/[/\\].*[/\\]/.test(path) ? lastPart(path) : path));
}

const lastPart = (path: string): string => /[^/\\]+(?=[/\\]?$)/.exec(path)?.[0] ?? '';
