const REFUSALS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk’s quota is used up',
  EROFS: 'the disk may only be read',
  EACCES: 'you don’t have the right to write there',
  EPERM: 'you don’t have the right to write there',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EEXIST: 'a file of that name stands where a folder is needed',
  EISDIR: 'a folder of that name stands where a file is needed',
  ENOTEMPTY: 'a folder of that name stands where a file is needed',
  ENOENT: 'the system makes no files or folders there',
  ELOOP: 'its path is a circle of links',
  ENAMETOOLONG: 'its path is longer than the system takes',
  EMFILE: 'the limit of open files is too low',
  ENFILE: 'the machine has too many files open',
  ENOMEM: 'the machine has no memory left',
  EIO: 'the disk failed',
  EBADF: 'it was closed',
};

/**
 * What the system refused, in words.
 * @param error as thrown
 * @returns undefined where it is no refusal of the system that is known here
 */
export function refusalText(error: unknown): string | undefined {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return Object.hasOwn(REFUSALS, code) ? REFUSALS[code] : undefined;
}

/** What of a machine can run out whatever is done with it: nobody's fault of a list, and none of the program. */
const RUN_OUT: ReadonlySet<string> = new Set(['EMFILE', 'ENFILE', 'ENOMEM']);

/**
 * Tells whether the machine ran out of something that every run needs.
 * @param error as thrown; what caused it is looked at too
 * @returns what ran out, in words
 */
export function runOut(error: unknown): string | undefined {
  for (let at = error; at instanceof Error; at = at.cause) {
    if ('code' in at && RUN_OUT.has(String(at.code))) return refusalText(at);
  }
  return undefined;
}
