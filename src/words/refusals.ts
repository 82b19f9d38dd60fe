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

/** As the system words them where Node's loader can't read a `package.json`: of that refusal it keeps the words alone (Node 22 and 24). */
const RUN_OUT_IN_LOADER: readonly (readonly [says: string, code: string])[] = [
  ['too many open files', 'EMFILE'],
  ['file table overflow', 'ENFILE'],
  ['not enough memory', 'ENOMEM'],
];

/** The code of what ran out; undefined: nothing did. */
function ranOutCode(error: Error, areFilesFew: boolean): string | undefined {
  const code = 'code' in error ? String(error.code) : '';
  if (RUN_OUT.has(code)) return code;
  // Node 20 takes a `package.json` that it can't open for none, and then looks for the package where it isn't.
  if (code === 'ERR_MODULE_NOT_FOUND' && areFilesFew) return 'EMFILE';
  if (code !== 'ERR_INVALID_PACKAGE_CONFIG') return undefined;
  return RUN_OUT_IN_LOADER.find(([says]) => error.message.endsWith(`: ${says}.`))?.[1];
}

/**
 * Tells whether the machine ran out of something that every run needs.
 * @param error as thrown; what caused it is looked at too
 * @param areFilesFew whether the process may have fewer files open at once than the program needs
 * @returns what ran out, in words
 */
export function runOut(error: unknown, areFilesFew = false): string | undefined {
  for (let at = error; at instanceof Error; at = at.cause) {
    const code = ranOutCode(at, areFilesFew);
    if (code !== undefined) return REFUSALS[code];
  }
  return undefined;
}
