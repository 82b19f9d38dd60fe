import { defineConfig } from 'vitest/config';

// The tests that start a browser or a process, each file in a process of its own.
export default defineConfig({
  test: {
    name: 'started',
    include: ['tests/**/*.{browser,process}.test.ts'],
    exclude: ['tests/outside/**'],
    globalSetup: ['tests/faults/program-setup.ts'],
    // Documents are read back page by page: with more room for the young, little of it is collected twice.
    execArgv: ['--max-semi-space-size=64'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
