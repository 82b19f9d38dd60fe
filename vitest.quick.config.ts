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
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
