import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** Everything that a file loads before its first line runs: packages and files, types left out. */
function loadedAtStart(file: URL, seen = new Set<string>()): Set<string> {
  if (seen.has(file.href)) return seen;
  seen.add(file.href);
  const source = readFileSync(file, 'utf8');
  for (const [, clause, from] of source.matchAll(
    /^(?:import|export)\s+(?!type\b)([^;]*?\bfrom\s+)?'([^']+)';/gms,
  )) {
    if (from === undefined) continue;
    // `import { type A, type B }` loads nothing either.
    const named = /^\{([^}]*)\}/.exec(clause ?? '')?.[1];
    const names = named?.split(',').flatMap((n) => n.trim() || []);
    if (names?.every((n) => n.startsWith('type '))) continue;
    if (from.startsWith('.')) loadedAtStart(new URL(from.replace(/\.js$/, '.ts'), file), seen);
    else seen.add(from);
  }
  return seen;
}

describe('the start of the program', () => {
  // The second is what the first loads for every command line; only a fault of loading it is caught.
  const files = ['cli.ts', 'commands/command-line.ts'];
  const loaded = new Set(
    files.flatMap((file) => [...loadedAtStart(new URL(`../../src/${file}`, import.meta.url))]),
  );

  it('loads the parser of the command line and nothing else from outside', () => {
    const packages = [...loaded].filter((name) => !name.startsWith('file:') && !name.startsWith('node:'));
    expect(packages).toEqual(['yargs']);
  });

  it('loads no room but commands, screen, words and model', () => {
    const rooms = new Set([...loaded].flatMap((name) => /\/src\/([a-z]+)\//.exec(name)?.[1] ?? []));
    expect([...rooms].sort()).toEqual(['commands', 'model', 'screen', 'words']);
  });
});
