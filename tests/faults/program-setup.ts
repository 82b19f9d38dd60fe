import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformWithOxc } from 'vite';
import type { TestProject } from 'vitest/node';

const root = fileURLToPath(new URL('../..', import.meta.url));

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of the program that all files of a run share; they only run it. */
    readonly program: string;
  }
}

/** Makes the program in a folder of its own, from the sources as they are now, so that a test never runs one that was built before. */
async function installProgram(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'shuntbook-program-'));
  for (const name of await readdir(join(root, 'src'), { recursive: true })) {
    if (!name.endsWith('.ts')) continue;
    const path = join(root, 'src', name);
    // What takes the types out for the tests themselves: in a fiftieth of the time that the compiler takes, which checks them elsewhere.
    const { code } = await transformWithOxc(await readFile(path, 'utf8'), path, {
      target: 'es2023',
      sourcemap: false,
      typescript: { onlyRemoveTypeImports: true },
    });
    const target = join(folder, 'dist', name.replace(/\.ts$/, '.js'));
    await mkdir(dirname(target), { recursive: true });
    await writeFile(target, code);
  }
  await cp(join(root, 'package.json'), join(folder, 'package.json'));
  await cp(join(root, 'templates'), join(folder, 'templates'), { recursive: true });
  for (const name of ['node_modules', 'fixtures']) await symlink(join(root, name), join(folder, name));
  return folder;
}

/** Once a run, before its files: makes the program, and takes it away when all is over. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = await installProgram();
  project.provide('program', folder);
  return () => rm(folder, { recursive: true, force: true });
}
