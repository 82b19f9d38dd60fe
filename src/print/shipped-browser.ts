import { createReadStream, createWriteStream } from 'node:fs';
import { access, constants, mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { nameOfThisProcess, whyNotPrivate } from './cache-folder.js';

/** The shipped browser, unpacked. */
export interface ShippedBrowser {
  readonly executable: string;
  /** Folder of the libraries that a bare system lacks. */
  readonly libraries: string;
}

/** True where the shipped browser runs: it is built for Linux on x64 alone. */
export function isShippedHere(): boolean {
  return process.platform === 'linux' && process.arch === 'x64';
}

/**
 * The shipped browser, unpacked into the cache folder once by version (2 s, 197 MB).
 * It is unpacked under a name of this process and renamed, so that a folder with the final name is whole.
 * @param cache a folder of this user alone
 * @throws Error where the package is missing, the disk is full or the folder isn't this user's
 */
export async function shippedBrowser(cache: string): Promise<ShippedBrowser> {
  const require = createRequire(import.meta.url);
  const packed = join(dirname(require.resolve('@sparticuz/chromium')), '..', '..');
  const { version } = JSON.parse(await readFile(join(packed, 'package.json'), 'utf8')) as { version: string };
  const folder = join(cache, `browser-${version}`);
  const unpacked = { executable: join(folder, 'chromium'), libraries: join(folder, 'lib') };
  const there = await access(folder).then(
    () => true,
    () => false,
  );
  if (!there) await unpack(join(packed, 'bin'), folder, join(cache, nameOfThisProcess('unpacking')));
  const because = (await whyNotPrivate(folder)) ?? (await whyNotPrivate(unpacked.executable));
  if (because !== undefined) throw new Error(`${folder}: ${because}`);
  await access(unpacked.executable, constants.X_OK);
  return unpacked;
}

async function unpack(from: string, folder: string, temporary: string): Promise<void> {
  const { extract } = await import('tar-fs');
  await mkdir(temporary, { mode: 0o700 });
  try {
    const executable = join(temporary, 'chromium');
    await pipeline(
      createReadStream(join(from, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(executable, { mode: 0o700 }),
    );
    // The archive holds one folder, `lib`.
    await pipeline(
      createReadStream(join(from, 'al2023.tar.br')),
      createBrotliDecompress(),
      extract(temporary, { dmode: 0o700, fmode: 0o600, strict: true }),
    );
    const file = await open(executable, 'r');
    await file.sync().finally(() => file.close());
    await rename(temporary, folder).catch(async (error: unknown) => {
      // Another process was faster: its folder is as good.
      await access(join(folder, 'chromium')).catch(() => {
        throw error;
      });
    });
  } finally {
    await rm(temporary, { recursive: true, force: true });
  }
}
