/** Open files with which every command is seen to load and run (measured by tests/attacks/machine.process.test.ts). */
const ENOUGH = 256;

/**
 * Whether this process may have too few files open at once for the program to be loaded whole. Asked of Node itself, since a file
 * that tells it might not open. Imports nothing: it is loaded before what might not be.
 */
export function areFilesFew(): boolean {
  const { report } = process as unknown as { report: { excludeNetwork?: boolean; getReport: () => object } };
  report.excludeNetwork = true;
  const { userLimits } = report.getReport() as { userLimits?: { open_files?: { soft?: unknown } } };
  const limit = userLimits?.open_files?.soft;
  return typeof limit === 'number' && limit < ENOUGH;
}
