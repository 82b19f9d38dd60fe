import childProcess from 'node:child_process';
import { syncBuiltinESMExports } from 'node:module';

// Before each file of the quick tests: whatever would start a process there, a browser too, throws.
const STARTERS = ['exec', 'execFile', 'execFileSync', 'execSync', 'fork', 'spawn', 'spawnSync'] as const;

for (const name of STARTERS) {
  Object.defineProperty(childProcess, name, {
    configurable: true,
    writable: true,
    value: () => {
      throw new Error(
        `A quick test starts no process (${name}): call its file *.browser.test.ts or *.process.test.ts.`,
      );
    },
  });
}
syncBuiltinESMExports();
