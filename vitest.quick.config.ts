import { defineConfig } from 'vitest/config';

// The tests that start no browser and no process: all that aren't called `*.browser.test.ts` or `*.process.test.ts`.
export default defineConfig({
  test: {
    name: 'quick',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/**/*.{browser,process}.test.ts', 'tests/outside/**'],
    setupFiles: ['tests/quick/start-nothing.ts'],
    // The sources are loaded once a worker, not once a file: a test leaves nothing behind that another could see.
    isolate: false,
    // Plans and documents are made and dropped by the thousand: with more room for the young, little of it is collected twice.
    execArgv: ['--max-semi-space-size=64'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
