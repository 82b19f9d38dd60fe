import { defineConfig } from 'vitest/config';

// Faults done for real: kills, full and read-only disks, no network (Linux, with `unshare`). Minutes, one after another.
export default defineConfig({
  test: {
    include: ['tests/faults/**/*.test.ts', 'tests/faults/**/*.long.ts'],
    globalSetup: ['tests/faults/program-setup.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    fileParallelism: false,
  },
});
